import type { Brief } from '../build/schema/brief.ts';
import { SEARCH_MEASURES, type SearchMeasure } from '../choose/searchMeasures.ts';
import { FRONT_MEASURES } from '../choose/shortlist/bounds.ts';
import type { Scale, SoftWant } from '../choose/shortlist/softWants.ts';
import { SEATS, type SearchSeat } from '../choose/shortlist/space.ts';
import type { HardLimit } from '../choose/shortlist/types.ts';
import { usualScale, usualSoftWants } from '../choose/shortlist/usualScales.ts';
import type { Dimension } from '../units/dimensions.ts';
import { nearestName } from '../units/nearestName.ts';
import { BadInput } from './io.ts';
import { numberOption, quantityOption } from './options.ts';

/** `flown-time=3`, `flown-time=3@2 min..8 min` (worst to best), `thrust-to-weight=2@7+-2` (target). */
export function wantOptions(texts: readonly string[], brief: Brief): readonly SoftWant[] {
  const wants = new Map(usualSoftWants(brief).map((want) => [want.measure, want]));
  for (const text of texts) {
    const match = /^([a-z-]+)=([\d.]+)(?:@(.+))?$/.exec(text.trim());
    if (match === null) {
      throw new BadInput(
        `--want: "${text}" does not read. Write measure=weight, measure=weight@worst..best or measure=weight@target+-tolerance, such as "flown-time=3@2 min..8 min".`,
      );
    }
    const measure = measureOption('--want', match[1] ?? '');
    const weight = numberOption('--want', match[2] ?? '', 0, 1000);
    if (weight === 0) {
      wants.delete(measure);
      continue;
    }
    const scale = match[3] === undefined ? usualScale(measure, brief) : scaleOption(measure, match[3]);
    if (scale === undefined) {
      throw new BadInput(
        `--want: ${measure} has no usual scale. Give one: ${measure}=${weight}@worst..best.`,
      );
    }
    wants.set(measure, { measure, weight, scale });
  }
  if (wants.size === 0) throw new BadInput('--want: nothing is left to want. Give one a weight above 0.');
  return [...wants.values()];
}

function scaleOption(measure: SearchMeasure, text: string): Scale {
  const [worst, best] = text.split('..');
  if (worst !== undefined && best !== undefined) {
    const scale = {
      worst: valueOption('--want', measure, worst),
      best: valueOption('--want', measure, best),
    };
    if (scale.worst === scale.best) throw new BadInput(`--want: "${text}": worst and best must differ.`);
    return { kind: 'ramp', ...scale };
  }
  const [target, tolerance] = text.split('+-');
  if (target !== undefined && tolerance !== undefined) {
    const scale = {
      target: valueOption('--want', measure, target),
      tolerance: valueOption('--want', measure, tolerance),
    };
    if (!(scale.tolerance > 0)) throw new BadInput(`--want: "${text}": the tolerance must be above 0.`);
    return { kind: 'target', ...scale };
  }
  throw new BadInput(`--want: "${text}" is no scale. Write worst..best or target+-tolerance.`);
}

/** `all-up-mass<=249 g`, `flown-time>=4 min`. */
export function limitOptions(texts: readonly string[]): readonly HardLimit[] {
  return texts.map((text) => {
    const match = /^([a-z-]+)\s*(<=|>=)\s*(.+)$/.exec(text.trim());
    if (match === null) {
      throw new BadInput(`--limit: "${text}" does not read. Write measure<=value or measure>=value.`);
    }
    const measure = measureOption('--limit', match[1] ?? '');
    const value = valueOption('--limit', measure, match[3] ?? '');
    return match[2] === '<=' ? { measure, most: value } : { measure, least: value };
  });
}

export function frontOptions(text: string | undefined): readonly string[] {
  if (text === undefined) return [];
  const list = text.split(',').map((each) => each.trim());
  const unknown = list.find((each) => FRONT_MEASURES[each] === undefined);
  if (unknown !== undefined) {
    throw new BadInput(
      `--front: "${unknown}" cannot be on a front. Allowed: ${Object.keys(FRONT_MEASURES).join(', ')}.`,
    );
  }
  return list;
}

export function seatOptions(text: string | undefined): readonly SearchSeat[] {
  const usual: readonly SearchSeat[] = ['frame', 'motors', 'propellers', 'pack', 'controllers'];
  if (text === undefined) return usual;
  return text.split(',').map((word) => {
    const found = SEATS.find((seat) => seat === word.trim());
    if (found !== undefined) return found;
    throw new BadInput(`--choose: "${word.trim()}" is not a seat to choose. Allowed: ${SEATS.join(', ')}.`);
  });
}

function measureOption(option: string, text: string): SearchMeasure {
  const all = Object.keys(SEARCH_MEASURES) as SearchMeasure[];
  const found = all.find((each) => each === text);
  if (found !== undefined) return found;
  const near = nearestName(text, all);
  throw new BadInput(
    `${option}: "${text}" is not a measure to search by. Allowed: ${all.join(', ')}.${near ? ` Did you mean "${near}"?` : ''}`,
  );
}

function valueOption(option: string, measure: SearchMeasure, text: string): number {
  const quantity = SEARCH_MEASURES[measure];
  if (quantity === 'money' || quantity === 'ratio') return numberOption(option, text.trim(), 0, 1e6);
  const dimension: Dimension = quantity;
  return quantityOption(option, text.trim(), dimension);
}
