import type { Region } from '../../build/schema/brief.ts';

/**
 * What the law says by region, as dated data. Not advice: local rules decide, they change, and a fact here
 * is as good as its citation and its day. `checked` tells where it was read.
 */
export interface Fact {
  readonly says: string;
  /** Regulation and article. */
  readonly citation: string;
  /** Year and month. */
  readonly asOf: string;
  readonly checked: 'regulation text' | "authority's page" | 'secondary source' | 'from memory';
}

/** Aircraft up to a mass, pack and all on board included, and what is asked of their pilots. */
export interface MassClass extends Fact {
  /** [kg]; infinite for the last. */
  readonly upTo: number;
  /** Whether exactly that mass still belongs to it. */
  readonly inclusive: boolean;
  readonly duty: string;
  /** Flown at this speed or faster it no longer counts [m/s]. */
  readonly underSpeed?: number;
}

/** Radiated power allowed without a licence. */
export interface RadioBand extends Fact {
  /** [Hz] */
  readonly from: number;
  readonly to: number;
  /** Antenna gain included [W, over an isotropic antenna]. */
  readonly radiated: number;
}

export interface RegionRules {
  /** Rising. */
  readonly massClasses: readonly MassClass[];
  readonly observer: Fact;
  readonly people: Fact;
  readonly radio: readonly RadioBand[];
}

const POUND = 0.45359237;
/** Over a half-wave dipole to over an isotropic antenna, 2.15 dB. */
const DIPOLE = 10 ** 0.215;

const SRD: Pick<Fact, 'citation' | 'asOf' | 'checked'> = {
  citation: 'CEPT ERC Recommendation 70-03, annexes 1 and 3',
  asOf: '2025-01',
  checked: 'from memory',
};

const SHORT_RANGE_DEVICES: readonly RadioBand[] = [
  {
    ...SRD,
    from: 868.0e6,
    to: 868.6e6,
    radiated: 0.025 * DIPOLE,
    says: '25 mW over a dipole, part of the time',
  },
  { ...SRD, from: 2.4e9, to: 2.4835e9, radiated: 0.1, says: '100 mW radiated' },
  { ...SRD, from: 5.725e9, to: 5.875e9, radiated: 0.025, says: '25 mW radiated' },
];

const EASA_FAQ = { asOf: '2025-01', checked: "authority's page" } as const;
const UK_2026 = {
  citation: 'UK Regulation (EU) 2019/947 as retained, and the CAA changes of 1 January 2026',
  asOf: '2026-01',
  checked: 'secondary source',
} as const;

export const REGION_RULES: Readonly<Record<Exclude<Region, 'other'>, RegionRules>> = {
  EU: {
    massClasses: [
      {
        ...EASA_FAQ,
        upTo: 0.25,
        inclusive: false,
        underSpeed: 19,
        citation: 'EU 2019/947, UAS.OPEN.020(5)(a); classes in EU 2019/945',
        says: 'under 250 g and slower than 19 m/s a private build flies in A1',
        duty: 'Register as operator if it carries a camera.',
      },
      {
        ...EASA_FAQ,
        upTo: Number.POSITIVE_INFINITY,
        inclusive: true,
        citation: 'EU 2019/947, UAS.OPEN.040; classes in EU 2019/945',
        says: 'a private build of 250 g or more flies in A3: no bystanders in reach, 150 m from built-up areas',
        duty: 'Register as operator, pass the online test, and look up the local zones.',
      },
    ],
    observer: {
      says: 'flying by goggles wants an observer beside the pilot who sees the aircraft',
      citation: 'EU 2019/947, UAS.OPEN.060(4)',
      asOf: '2025-01',
      checked: 'from memory',
    },
    people: {
      says: 'never over crowds; in A3 nobody who is not involved may be in reach',
      citation: 'EU 2019/947, UAS.OPEN.020 and UAS.OPEN.040',
      asOf: '2025-01',
      checked: "authority's page",
    },
    radio: SHORT_RANGE_DEVICES,
  },
  UK: {
    massClasses: [
      {
        ...UK_2026,
        upTo: 0.1,
        inclusive: false,
        says: 'under 100 g no identity is asked for',
        duty: "Learn the authority's code all the same.",
      },
      {
        ...UK_2026,
        upTo: 0.25,
        inclusive: false,
        says: 'from 100 g the pilot needs a flyer identity, and with a camera the owner an operator identity; under 250 g it may fly near people',
        duty: 'Pass the online test, and mark the aircraft with the operator identity.',
      },
      {
        ...UK_2026,
        upTo: Number.POSITIVE_INFINITY,
        inclusive: true,
        says: 'a private build of 250 g or more flies far from people: 50 m from anyone, 150 m from built-up areas',
        duty: 'Get flyer and operator identities, and mark the aircraft.',
      },
    ],
    observer: {
      says: 'flying by goggles wants an observer beside the pilot who sees the aircraft',
      citation: 'UK Regulation (EU) 2019/947 as retained, UAS.OPEN.060(4)',
      asOf: '2026-01',
      checked: 'from memory',
    },
    people: {
      says: 'never over crowds, whatever the mass',
      citation: UK_2026.citation,
      asOf: '2026-01',
      checked: 'secondary source',
    },
    radio: SHORT_RANGE_DEVICES,
  },
  US: {
    massClasses: [
      {
        upTo: 0.55 * POUND,
        inclusive: true,
        says: 'at 0.55 lb or less (249 g) on take-off, flown for recreation, it needs no registration',
        duty: 'Take the recreational safety test (49 USC 44809), and check the airspace.',
        citation: '14 CFR 48.15(b); 49 USC 44809',
        asOf: '2021-01',
        checked: 'regulation text',
      },
      {
        upTo: Number.POSITIVE_INFINITY,
        inclusive: true,
        says: 'over 0.55 lb (249 g) it must be registered and marked, and carry remote identification outside the fields recognised for flying without',
        duty: 'Register it, fit a broadcast module, take the recreational safety test, and check the airspace.',
        citation: '14 CFR 48.15 and part 89; 49 USC 44809',
        asOf: '2021-01',
        checked: 'regulation text',
      },
    ],
    observer: {
      says: 'flying by goggles wants a visual observer beside the pilot',
      citation: '14 CFR 107.31 and 107.33; 49 USC 44809(a)(3)',
      asOf: '2025-01',
      checked: 'from memory',
    },
    people: {
      says: 'over people only, in the simplest category, at 0.55 lb or less and without exposed rotating parts that would lacerate skin',
      citation: '14 CFR 107.39 and 107.110',
      asOf: '2026-04',
      checked: 'regulation text',
    },
    radio: [
      {
        from: 2.4e9,
        to: 2.4835e9,
        radiated: 4,
        says: '1 W into an antenna of 6 dBi, for spread-spectrum devices',
        citation: '47 CFR 15.247',
        asOf: '2025-01',
        checked: 'from memory',
      },
      {
        from: 5.725e9,
        to: 5.85e9,
        radiated: 4,
        says: '1 W into an antenna of 6 dBi, for digital devices; analogue video wants an amateur licence',
        citation: '47 CFR 15.247 and part 97',
        asOf: '2025-01',
        checked: 'from memory',
      },
    ],
  },
};

/** A fact's citation with its day, as a verdict's source. */
export function sourceOf({ citation, asOf, checked }: Fact): string {
  return `${citation}, as of ${asOf}${checked === 'from memory' ? ' (from memory)' : checked === 'secondary source' ? ' (secondary source)' : ''}; local rules decide`;
}

/** The class a mass belongs to; undefined where the region is not told. */
export function massClassOf(region: Region, mass: number): MassClass | undefined {
  if (region === 'other') return undefined;
  return REGION_RULES[region].massClasses.find(
    ({ upTo, inclusive }) => mass < upTo || (inclusive && mass === upTo),
  );
}

/** The band a carrier lies in; undefined where none is known. */
export function radioBandOf(region: Region, frequency: number): RadioBand | undefined {
  if (region === 'other') return undefined;
  return REGION_RULES[region].radio.find(({ from, to }) => frequency >= from && frequency <= to);
}
