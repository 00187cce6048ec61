import type { PlateModuli } from '../../src/airframe/section.ts';

/** Sheets that tests and benchmarks share, as the solid-element decks have them (scripts/solid-arm.py). */
export const iso: PlateModuli = {
  E1: 50e9,
  E2: 50e9,
  E3: 50e9,
  nu12: 0.3,
  nu13: 0.3,
  nu23: 0.3,
  G12: 19.2308e9,
  G13: 19.2308e9,
  G23: 19.2308e9,
};

export const ort: PlateModuli = {
  E1: 52e9,
  E2: 52e9,
  E3: 9e9,
  nu12: 0.12,
  nu13: 0.3,
  nu23: 0.3,
  G12: 8e9,
  G13: 3.5e9,
  G23: 3.5e9,
};

export const quasi: PlateModuli = {
  E1: 43e9,
  E2: 43e9,
  E3: 9e9,
  nu12: 0.32,
  nu13: 0.3,
  nu23: 0.3,
  G12: 16.3e9,
  G13: 3.5e9,
  G23: 3.5e9,
};

export const oneWay: PlateModuli = {
  E1: 110e9,
  E2: 9e9,
  E3: 9e9,
  nu12: 0.3,
  nu13: 0.3,
  nu23: 0.4,
  G12: 4.5e9,
  G13: 4.5e9,
  G23: 3.2e9,
};
