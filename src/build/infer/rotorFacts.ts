import { standardAtmosphere } from '../../air/standardAtmosphere.ts';
import { bladeFromNameplate, bladeFromTable } from '../../rotor/blade.ts';
import { fitBlade } from '../../rotor/fitBlade.ts';
import { sectionTables } from '../../rotor/sections.ts';
import type { Blade, MeasuredPoint } from '../../rotor/types.ts';
import type { CraftRotor } from '../craft.ts';
import type { PartOf } from '../schema/part.ts';

/** Least known first; a measured point that tells nothing is what its name says. */
const TRUSTS = ['inferred', 'maker'] as const;

/** A propeller's blade, inertia and hub from whatever is known of it. */
export function rotorFacts(part: PartOf<'propeller'>): CraftRotor {
  const inferred: string[] = [];
  const known = <T>(name: string, told: T | undefined, rule: T): T => {
    if (told === undefined) inferred.push(name);
    return told ?? rule;
  };
  const shape = bladeOf(part);
  const fitted = part.measured.length > 0 ? fitBlade(shape, sectionTables(), staticPoints(part)) : undefined;
  if (fitted && !fitted.ok) inferred.push(`measured points left out: ${fitted.reason}`);
  const blade = fitted?.ok ? fitted.value : shape;
  const small = part.size.diameter < 0.085; // up to 3.3 in: pressed or screwed on thin shafts
  const hubDiameter = known('hubDiameter', part.hubDiameter, small ? 0.009 : 0.0135);
  const pointTrust = TRUSTS.find((trust) =>
    part.measured.some(({ thrust, power }) => [thrust, power].some((each) => each.trust === trust)),
  );
  return {
    partId: part.id,
    blade,
    ...(fitted?.ok ? { pointTrust: pointTrust ?? 'measured' } : {}),
    inertia: known('inertia', part.inertia?.value, propellerInertia(blade, part.mass.value, hubDiameter)),
    hubDiameter,
    hubThickness: known('hubThickness', part.hubThickness, small ? 0.0045 : 0.0065),
    bore: known('bore', part.bore, small ? 0.0015 : 0.005),
    fixing: known('fixing', part.fixing, small ? 'screws' : 'nut'),
    inferred,
  };
}

function bladeOf(part: PartOf<'propeller'>): Blade {
  const { diameter, pitch, bladeCount } = part.size;
  if (!part.bladeTable) {
    const chord = part.chordAt75 ? { chordAt75: part.chordAt75.value } : {};
    return bladeFromNameplate({ diameter, pitch, bladeCount, ...chord });
  }
  const radius = diameter / 2;
  return bladeFromTable({
    diameter,
    pitch,
    bladeCount,
    radiusRatio: part.bladeTable.map(({ at }) => at),
    chordRatio: part.bladeTable.map(({ chord }) => chord / radius),
    twist: part.bladeTable.map(({ angle }) => angle),
  });
}

/** A propeller's measured static points, in the standard's air at sea level, each with the spread it tells. */
export function staticPoints(part: PartOf<'propeller'>): readonly MeasuredPoint[] {
  const air = standardAtmosphere({ height: 0 });
  return part.measured.map(({ angularSpeed, thrust, power }) => ({
    angularSpeed,
    thrust: thrust.value,
    power: power.value,
    ...(thrust.deviation ? { thrustSpread: thrust.deviation / thrust.value } : {}),
    ...(power.deviation ? { powerSpread: power.deviation / power.value } : {}),
    air,
  }));
}

/**
 * About the shaft [kg m2]: a fifth of the mass in the hub, the rest along the blades in proportion to
 * chord squared (sections of like shape) and to a thickness that halves from root to tip.
 * Common practice, no source; about 20 %.
 */
function propellerInertia(blade: Blade, mass: number, hubDiameter: number): number {
  const radius = blade.diameter / 2;
  let weight = 0;
  let moment = 0;
  for (const [index, ratio] of blade.radiusRatio.entries()) {
    const before = blade.radiusRatio[index - 1] ?? ratio;
    const after = blade.radiusRatio[index + 1] ?? ratio;
    const section = ((after - before) / 2) * (blade.chordRatio[index] ?? 0) ** 2 * (1 - 0.5 * ratio);
    weight += section;
    moment += section * ratio * ratio;
  }
  const bladePart = weight > 0 ? (moment / weight) * radius * radius : 0.2 * radius * radius;
  return mass * (0.8 * bladePart + (0.2 * (hubDiameter * hubDiameter)) / 8);
}
