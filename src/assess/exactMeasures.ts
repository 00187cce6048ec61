import type { TipGap } from '../airframe/types.ts';
import type { Craft } from '../build/craft.ts';
import { BALANCE_SPREAD } from './levers.ts';
import type { Measure } from './types.ts';
import { packShareWindow } from './windows.ts';

/** Half the band of the balance [m]: the spread that the hover's bands take for it, 10th to 90th percentile. */
const BALANCE_BAND = 1.28 * BALANCE_SPREAD;

/**
 * Measures that follow from geometry and masses by addition. Their bands are those of the inputs
 * that matter: a mass band where mass divides, none where only cut dimensions stand.
 *
 * @param massDeviation one standard deviation of the all-up mass, relative
 */
export function exactMeasures(
  craft: Craft,
  gaps: readonly TipGap[],
  massDeviation: number,
): readonly Measure[] {
  const { mass, centreOfGravity, inertia } = craft.massProperties;
  const packMass = craft.parts.pack.mass.value;
  const share = packMass / mass;
  const list: Measure[] = [
    {
      ...airframe('motor-diagonal', 'largest motor-to-motor distance', 'length', craft.layout.diagonal),
      how: 'Largest distance between motor axes in plan.',
    },
    {
      id: 'pack-share',
      label: "pack's share of the mass",
      sheet: 'airframe',
      quantity: 'share',
      value: share,
      band: [share * (1 - 1.28 * massDeviation), share * (1 + 1.28 * massDeviation)],
      better: 'window',
      window: packShareWindow,
      how: 'Mass of the pack over all-up mass.',
      source: 'addition',
      leansOn: [
        { input: 'mass of the pack', trust: craft.parts.pack.mass.trust ?? craft.parts.pack.trust, share: 1 },
      ],
    },
    {
      ...airframe('balance-forward', 'balance, forward of the motors', 'length', centreOfGravity[0]),
      band: [centreOfGravity[0] - BALANCE_BAND, centreOfGravity[0] + BALANCE_BAND],
      how: 'Sum of mass x place over mass, x forward from the mean of the motors.',
    },
    {
      ...airframe('balance-height', 'balance, above the arms', 'length', -centreOfGravity[2]),
      band: [-centreOfGravity[2] - BALANCE_BAND, -centreOfGravity[2] + BALANCE_BAND],
      how: 'Sum of mass x place over mass, upward from the mid-plane of the arms.',
    },
  ];
  const axes = [
    ['roll', inertia[0][0]],
    ['pitch', inertia[1][1]],
    ['yaw', inertia[2][2]],
  ] as const;
  for (const [axis, value] of axes) {
    list.push({
      ...airframe(`inertia-${axis}`, `moment of inertia, ${axis}`, 'inertia', value),
      band: [value * (1 - 1.28 * (massDeviation + 0.04)), value * (1 + 1.28 * (massDeviation + 0.04))],
      how: 'Every part as a solid of even density, moved to the centre of gravity by the parallel-axis theorem.',
      source: 'solid-body mechanics; shapes of parts: common practice, no source',
      leansOn: [{ input: 'shapes and places of the parts', trust: 'inferred', share: 0.6 }],
    });
  }
  const nearest = gaps[0];
  if (nearest !== undefined) {
    list.push({
      ...airframe('least-tip-gap', 'least tip gap', 'length', nearest.gap),
      better: 'more',
      how: `From the ${nearest.motor} disc to ${nearest.to}: distance in plan to the nearest neighbour that reaches its height.`,
    });
  }
  return list;
}

function airframe(id: string, label: string, quantity: Measure['quantity'], value: number): Measure {
  return {
    id,
    label,
    sheet: 'airframe',
    quantity,
    value,
    band: [value, value],
    better: 'neither',
    how: '',
    source: 'geometry',
    leansOn: [],
  };
}
