import type { PlyMaterial } from './laminate.ts';

const FABRIC_SOURCE = 'from memory: textbook values of 3k carbon fabric in epoxy, half fibre by volume';

/** Carbon plies that frame sheets are pressed from; every value is an ordinary one, not a maker's. */
export const PLY_PRESETS: Readonly<Record<'3k plain' | '3k twill' | 'one-way', PlyMaterial>> = {
  '3k plain': {
    name: '3k plain weave carbon, epoxy',
    E1: 60e9,
    E2: 60e9,
    E3: 9e9,
    nu12: 0.05,
    G12: 4e9,
    G13: 3.5e9,
    G23: 3.5e9,
    density: 1520,
    strength: { tension1: 600e6, compression1: 500e6, tension2: 600e6, compression2: 500e6, shear12: 80e6 },
    source: FABRIC_SOURCE,
  },
  '3k twill': {
    name: '3k 2 x 2 twill carbon, epoxy',
    E1: 63e9,
    E2: 63e9,
    E3: 9e9,
    nu12: 0.05,
    G12: 4.2e9,
    G13: 3.5e9,
    G23: 3.5e9,
    density: 1530,
    strength: { tension1: 650e6, compression1: 530e6, tension2: 650e6, compression2: 530e6, shear12: 80e6 },
    source: `${FABRIC_SOURCE}; twill a little straighter than plain`,
  },
  'one-way': {
    name: 'one-way carbon, epoxy',
    E1: 125e9,
    E2: 8.5e9,
    E3: 8.5e9,
    nu12: 0.3,
    G12: 4.5e9,
    G13: 4.5e9,
    G23: 3.2e9,
    density: 1550,
    strength: { tension1: 1500e6, compression1: 1000e6, tension2: 40e6, compression2: 180e6, shear12: 70e6 },
    source: 'from memory: textbook values of standard-modulus one-way carbon in epoxy',
  },
};
