import { airOf } from '../../assess/dayOf.ts';
import { prepareRotors } from '../../assess/prepareRotors.ts';
import { resolveBuild } from '../../build/resolve/resolveBuild.ts';
import type { Shelf } from '../../build/shelf.ts';
import { evaluationContext } from '../../choose/shortlist/evaluate.ts';
import { spaceOf } from '../../choose/shortlist/space.ts';
import { usualSoftWants } from '../../choose/shortlist/usualScales.ts';
import { RISK_COST } from '../../choose/standing.ts';
import { cannotTurn, KNOBS, type Knob, tune } from '../../choose/tune.ts';
import { sectionTables } from '../../rotor/sections.ts';
import { withUnit } from '../../units/formatQuantity.ts';
import type { TuneAsk, TuneView } from './tuneProtocol.ts';

const MOST = 300;

/** Sets knobs of a build under the wants and limits of the shortlist. */
export function tuneView({ build, brief, wants, limits, ranges }: TuneAsk, shelf: Shelf): TuneView {
  const none = (trouble: string): TuneView => ({
    build,
    evaluations: 0,
    settled: false,
    turned: [],
    trace: [],
    trouble,
  });
  const craft = resolveBuild(build, shelf);
  if (!craft.ok) return none('it makes no aircraft as it is');
  const sections = sectionTables();
  const air = airOf(brief);
  const rotors = prepareRotors(craft.value, air, sections);
  if (!rotors.ok) return none('its propeller has no map');
  const able = ranges.filter(({ knob }) => cannotTurn(knob, build, shelf) === undefined);
  if (able.length === 0)
    return none(cannotTurn(ranges[0]?.knob ?? 'camera-tilt', build, shelf) ?? 'nothing is ticked');
  const question = {
    template: build,
    space: spaceOf(build, shelf, []),
    wants: usualSoftWants(
      brief,
      wants.filter(({ weight }) => weight > 0),
    ),
    limits,
    riskCost: RISK_COST,
    top: 1,
    front: [],
  };
  const context = evaluationContext({ brief, shelf, sections, rotors: rotors.value }, air);
  const found = tune(build, able, question, context, MOST);
  return {
    build: { ...found.build, name: `${build.name}, tuned`.slice(0, 200) },
    ...(Number.isFinite(found.before) ? { before: found.before } : {}),
    ...(Number.isFinite(found.standing) ? { after: found.standing } : {}),
    ...(found.stoppedBy === undefined ? {} : { stoppedBy: found.stoppedBy.replaceAll('-', ' ') }),
    evaluations: found.minimum.evaluations,
    settled: found.minimum.settled,
    turned: able.map(({ knob }) => ({
      label: KNOBS[knob].label,
      was: settingWords(knob, found.start[knob] ?? 0),
      is: settingWords(knob, found.settings[knob] ?? 0),
    })),
    trace: found.minimum.trace
      .filter(({ value }) => Number.isFinite(value))
      .map(({ evaluations, value }) => ({ tried: evaluations, standing: -value })),
  };
}

function settingWords(knob: Knob, value: number): string {
  switch (KNOBS[knob].quantity) {
    case 'length':
      return withUnit((1000 * value).toFixed(1), 'mm');
    case 'angle':
      return `${((180 * value) / Math.PI).toFixed(1)} deg`;
    case 'ratio':
      return value.toFixed(3);
  }
}
