import type { ElasticConstants, FrameMaterial } from '../../airframe/types.ts';
import type { PartOf } from '../schema/part.ts';

type MaterialKind = PartOf<'frame'>['material']['kind'];

interface Sheet {
  readonly density: number;
  readonly elastic: ElasticConstants;
  readonly tension: number;
  readonly compression: number;
  readonly shear: number;
  readonly interlaminar: number;
  readonly scatter: number;
  readonly thicknessScatter: number;
}

const SOURCE = 'typical sheet of this kind, from memory';

/** A balanced woven sheet: alike along and across, soft in shear. */
const woven = (along: number, shear: number, throughShear: number, nu12: number): ElasticConstants => ({
  E1: along,
  E2: along,
  nu12,
  G12: shear,
  G13: throughShear,
  G23: throughShear,
});

/** Plain plastic: alike in all directions, G = E / (2 (1 + nu)). */
const plastic = (modulus: number, nu12: number): ElasticConstants => {
  const shear = modulus / (2 * (1 + nu12));
  return { E1: modulus, E2: modulus, nu12, G12: shear, G13: shear, G23: shear };
};

/** Cured sheets as sold for frames, epoxy with about 55 % fibre. All from memory of data sheets. */
const SHEETS: Readonly<Record<MaterialKind, Sheet>> = {
  'carbon plain weave': {
    density: 1550,
    elastic: woven(52e9, 4.2e9, 3e9, 0.06),
    tension: 550e6,
    compression: 450e6,
    shear: 80e6,
    interlaminar: 50e6,
    scatter: 0.15,
    thicknessScatter: 0.04,
  },
  'carbon twill': {
    density: 1550,
    elastic: woven(56e9, 4.2e9, 3e9, 0.06),
    tension: 600e6,
    compression: 480e6,
    shear: 80e6,
    interlaminar: 50e6,
    scatter: 0.12,
    thicknessScatter: 0.03,
  },
  'carbon unidirectional': {
    density: 1570,
    elastic: { E1: 115e9, E2: 9e9, nu12: 0.3, G12: 4.5e9, G13: 4.5e9, G23: 3.2e9 },
    tension: 1500e6,
    compression: 900e6,
    shear: 75e6,
    interlaminar: 65e6,
    scatter: 0.12,
    thicknessScatter: 0.03,
  },
  'glass laminate': {
    density: 1850,
    elastic: woven(22e9, 4e9, 3e9, 0.13),
    tension: 340e6,
    compression: 380e6,
    shear: 70e6,
    interlaminar: 45e6,
    scatter: 0.1,
    thicknessScatter: 0.05,
  },
  'moulded nylon': {
    density: 1350,
    elastic: plastic(6e9, 0.38),
    tension: 110e6,
    compression: 130e6,
    shear: 60e6,
    interlaminar: 60e6,
    scatter: 0.15,
    thicknessScatter: 0.02,
  },
  polycarbonate: {
    density: 1200,
    elastic: plastic(2.3e9, 0.37),
    tension: 62e6,
    compression: 80e6,
    shear: 40e6,
    interlaminar: 40e6,
    scatter: 0.08,
    thicknessScatter: 0.02,
  },
};

/** A frame's material: the typical sheet of its kind, with what the part itself tells laid over it. */
export function frameMaterial(told: PartOf<'frame'>['material']): FrameMaterial {
  const sheet = SHEETS[told.kind];
  const ratio = told.modulusAlong ? told.modulusAlong.value / sheet.elastic.E1 : 1;
  const isUnidirectional = told.kind === 'carbon unidirectional';
  const strength = told.strength ? told.strength.value / sheet.tension : 1;
  return {
    name: told.kind,
    density: told.density?.value ?? sheet.density,
    elastic: {
      ...sheet.elastic,
      E1: sheet.elastic.E1 * ratio,
      E2: sheet.elastic.E2 * (isUnidirectional ? 1 : ratio),
    },
    strength: {
      tension: sheet.tension * strength,
      compression: sheet.compression * strength,
      shear: sheet.shear,
      interlaminar: sheet.interlaminar,
      scatter: sheet.scatter,
    },
    thicknessScatter: sheet.thicknessScatter,
    source: told.modulusAlong || told.strength ? `part, else ${SOURCE}` : SOURCE,
  };
}
