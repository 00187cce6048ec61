import type { Brief } from '../schema/brief.ts';
import type { FileData } from './buildData.ts';
import { givenData, moneyText, quantityText } from './quantityText.ts';

/** A brief as its file holds it, every value with its unit. `readBrief` of it gives the same brief. */
export function briefData(brief: Brief): FileData {
  const { site } = brief;
  const data: FileData = {
    format: brief.format,
    name: brief.name,
    note: brief.note,
    purpose: brief.purpose,
    pilot: { ...brief.pilot },
    budget: brief.budget && moneyText(brief.budget),
    massLimit: brief.massLimit === undefined ? undefined : quantityText(brief.massLimit, 'mass'),
    site: {
      height: quantityText(site.height, 'length', 'm'),
      temperature: quantityText(site.temperature, 'temperature'),
      humidity: quantityText(site.humidity, 'share'),
      wind: givenData(site.wind, 'speed'),
    },
    region: brief.region,
    currency: brief.currency,
    exchange: Object.fromEntries(
      Object.entries(brief.exchange).map(([code, worth]) => [code, moneyText(worth)]),
    ),
    exchangeAsOf: brief.exchangeAsOf,
    flyingStyle: brief.flyingStyle,
    mustCarry: brief.mustCarry,
    alreadyOwns: [...brief.alreadyOwns],
    flightsPlanned: brief.flightsPlanned,
    farthest: brief.farthest === undefined ? undefined : quantityText(brief.farthest, 'length', 'm'),
    shippingPerOrder: brief.shippingPerOrder && moneyText(brief.shippingPerOrder),
    packsWanted: brief.packsWanted,
    reserve: quantityText(brief.reserve, 'share'),
  };
  return Object.fromEntries(Object.entries(data).filter(([, value]) => value !== undefined));
}
