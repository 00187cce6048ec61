import type { TipGap } from '../airframe/types.ts';
import type { Craft } from '../build/craft.ts';
import { SUNDRY_DEVIATION, SUNDRY_SHARE } from '../build/infer/sundryMass.ts';
import { packMassDeviation } from '../build/resolve/unknowns.ts';
import type { Purpose } from '../build/schema/brief.ts';
import { BALANCE_SPREAD } from './levers.ts';
import { massDeviationOf } from './massBand.ts';
import { bandOf } from './propagate.ts';
import type { Leaning, Measure } from './types.ts';
import { packShareWindow } from './windows.ts';

/** Half the band of the balance [m]: the spread that the hover's bands take for it, 10th to 90th percentile. */
const BALANCE_BAND = 1.28 * BALANCE_SPREAD;

/** One standard deviation of cut plates and bolts in their holes, and of a moulded propeller's radius with them (common practice, no source) [m]. */
const CUT_SPREAD = 0.3e-3;
const GAP_SPREAD = 0.4e-3;
const CUT: Leaning = { input: 'cut plates and bolts in their holes', trust: 'inferred', share: 1 };
const BALANCE: Leaning = { input: 'balance of the finished craft', trust: 'inferred', share: 1 };

/**
 * Measures that follow from geometry and masses by addition. Their bands are those of the inputs
 * that matter: a mass band where mass divides, the play of cut plates and bolts where only dimensions stand.
 */
export function exactMeasures(craft: Craft, gaps: readonly TipGap[], purpose: Purpose): readonly Measure[] {
  const { centreOfGravity, inertia } = craft.massProperties;
  const massDeviation = massDeviationOf(craft);
  const list: Measure[] = [
    {
      ...airframe('motor-diagonal', 'largest motor-to-motor distance', 'length', craft.layout.diagonal),
      band: bandOf(craft.layout.diagonal, CUT_SPREAD),
      leansOn: [CUT],
      how: 'Largest distance between motor axes in plan.',
    },
    packShare(craft, purpose),
    ...sundries(craft),
    {
      ...airframe('balance-forward', 'balance, forward of the motors', 'length', centreOfGravity[0]),
      band: [centreOfGravity[0] - BALANCE_BAND, centreOfGravity[0] + BALANCE_BAND],
      leansOn: [BALANCE],
      how: 'Sum of mass x place over mass, x forward from the mean of the motors.',
    },
    {
      ...airframe('balance-height', 'balance, above the arms', 'length', -centreOfGravity[2]),
      band: [-centreOfGravity[2] - BALANCE_BAND, -centreOfGravity[2] + BALANCE_BAND],
      leansOn: [BALANCE],
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
      band: [nearest.gap - 1.28 * GAP_SPREAD, nearest.gap + 1.28 * GAP_SPREAD],
      leansOn: [{ ...CUT, input: 'moulded diameter, cut plates and bolts in their holes' }],
      better: 'more',
      how: `From the ${nearest.motor} disc to ${nearest.to}: distance in plan to the nearest neighbour that reaches its height.`,
    });
  }
  list.push(allUpMass(craft));
  return list;
}

/** Known whether it flies or not. */
function allUpMass({ massProperties: { mass }, unknowns }: Craft): Measure {
  const unsure = unknowns.filter(({ lever, deviation }) => lever === 'massScale' && deviation > 0);
  const variance = unsure.reduce((sum, { deviation }) => sum + deviation ** 2, 0);
  return {
    ...airframe('all-up-mass', 'all-up mass', 'mass', mass),
    band: bandOf(mass, mass * Math.sqrt(variance)),
    better: 'less',
    how: 'Sum of every part on board, pack included, and 2 % for solder, ties, tape and small screws; a measured mass overrides it.',
    source: 'addition',
    leansOn: unsure
      .map(({ label, trust, deviation }) => ({ input: label, trust, share: deviation ** 2 / variance }))
      .sort((a, b) => b.share - a.share),
  };
}

/** A pack that is heavier than told makes the whole heavier too; on a scale the whole is known by itself. */
function packShare(craft: Craft, purpose: Purpose): Measure {
  const { parts, massProperties, build } = craft;
  const { mass } = parts.pack;
  const share = mass.value / massProperties.mass;
  const own = packMassDeviation(parts);
  const whole = massDeviationOf(craft);
  const weighed = build.measured.mass !== undefined;
  const rest = weighed ? whole : Math.sqrt(Math.max(0, whole ** 2 - (share * own) ** 2));
  const ofPack = (weighed ? 1 : 1 - share) * own;
  const variance = ofPack ** 2 + rest ** 2;
  return {
    ...airframe('pack-share', "pack's share of the mass", 'share', share),
    band: bandOf(share, share * Math.sqrt(variance)),
    better: 'window',
    window: packShareWindow(purpose),
    how: 'Mass of the pack over all-up mass.',
    source: 'addition',
    leansOn:
      variance > 0
        ? [
            {
              input: 'mass of the pack',
              trust: mass.trust ?? parts.pack.trust,
              share: ofPack ** 2 / variance,
            },
            {
              input: weighed ? 'all-up mass' : 'mass of all the rest',
              trust: weighed ? ('measured' as const) : ('inferred' as const),
              share: rest ** 2 / variance,
            },
          ].sort((a, b) => b.share - a.share)
        : [],
  };
}

/** What no list of parts has; nothing on a weighed craft. */
function sundries({ sundryMass }: Craft): readonly Measure[] {
  if (sundryMass === 0) return [];
  const spread = (1.2815515655446004 * SUNDRY_DEVIATION) / SUNDRY_SHARE;
  return [
    {
      ...airframe('sundry-mass', 'solder, ties, tape, small screws', 'mass', sundryMass),
      band: [sundryMass * (1 - spread), sundryMass * (1 + spread)],
      how: '2 % of the mass of all listed parts, in four builds of five between half a hundredth and three and a half; nothing once the build tells a weighed all-up mass.',
      source: 'common practice, no source',
      leansOn: [{ input: 'solder, ties, tape and small screws', trust: 'inferred', share: 1 }],
    },
  ];
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
