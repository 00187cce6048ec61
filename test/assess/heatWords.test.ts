import { expect, it } from 'vitest';
import { tellHover } from '../../src/assess/figures.ts';
import { flownMeasures } from '../../src/assess/flownMeasures.ts';
import { hoverFindings } from '../../src/assess/hoverFindings.ts';
import { wiringHeat } from '../../src/assess/parts/heat.ts';
import { stationReports } from '../../src/assess/stationReports.ts';
import { limitCell } from '../../src/cli/print/bandedCell.ts';
import { measuresText } from '../../src/cli/print/partText.ts';
import { neutralLevers } from '../../src/flight/types.ts';
import { sayBand, sayFigure } from '../../src/report/sayFigure.ts';
import { contextOf } from './parts/crafts.ts';

const context = contextOf('first-freestyle/turnstone');
const flight = context.flight!;

// Once "too hot after about 0 s".
it('a motor that a hover brings to its limit is too hot at once', () => {
  const stations = flight.model.stations.map((station) => ({
    ...station,
    motor: {
      ...station.motor,
      limits: { ...station.motor.limits, windingTemperature: flight.model.airTemperature + 5 },
    },
  }));
  const model = { ...flight.model, stations };
  const told = tellHover(model, neutralLevers, flight.style, context.craft);
  if (!told.ok) throw new Error(told.reason);
  const measures = flownMeasures(context.craft, context.brief, { ...flight, model, told: told.value });
  const measure = measures.find(({ id }) => id === 'full-throttle-time-to-limit')!;
  expect(measure.words).toBe('at once');
  expect(sayFigure(measure, { currency: 'GBP' })).toEqual({ text: 'at once', unit: '' });
  expect(sayBand(measure, { currency: 'GBP' })).toBe('');
  expect(measuresText([measure])).toMatch(/too hot +at once/);
  expect(limitCell({ value: 0, band: [0, 0] })).toBe('at once');
  expect(limitCell(undefined)).toBe('never');
  const reports = stationReports(context.craft, told.value.story);
  const found = hoverFindings(told.value.story, measures, reports, context.brief);
  expect(found.find(({ id }) => id === 'full-throttle-heat')!.says).toContain('too hot at once');
});

// Once "would settle at 2500 degC".
it('a wire beyond the model is burnt, in words, and no number is made up for it', () => {
  const { wiring } = context.craft;
  const thin = { ...wiring.main, area: wiring.main.area / 12 };
  const craft = { ...context.craft, wiring: { ...wiring, main: thin } };
  const { measures, findings } = wiringHeat.run({ ...context, craft });
  const lead = measures.find(({ id }) => id === 'pack-lead-temperature')!;
  expect(lead.words).toMatch(/^burnt: over 300/);
  expect(lead.value).toBe(573.15);
  expect(lead.how).toContain('left out');
  expect(findings.find(({ id }) => id === 'hot-pack-lead')!.says).toMatch(/would burn: over 300\s°?degC/);
  for (const { says } of findings) expect(says).not.toMatch(/\d{4}/);
});
