import { buildArms } from '../../airframe/buildArms.ts';
import { framePrimitives } from '../../airframe/framePrimitives.ts';
import { itemMass } from '../../airframe/massProperties.ts';
import type {
  CameraPlace,
  FrameGeometry,
  GuardGeometry,
  Layout,
  PlateGeometry,
  Point2,
  StandoffGeometry,
} from '../../airframe/types.ts';
import type { PartOf } from '../schema/part.ts';
import { frameMaterial } from './frameMaterial.ts';
import type { FrameSizes } from './frameSizes.ts';

/** Windows and holes of a usual plate (common practice, no source). */
const CUT_AWAY = 0.3;
/** Nylon-filled guard rings. */
const GUARD_DENSITY = 1150;
const ALUMINIUM = { density: 2700, modulus: 69e9 };

/**
 * A frame as solids. Separate arms lie on the bottom plate, the stack stands over them, standoffs carry
 * the top plate; a one-piece frame has its arms and bottom plate in one sheet. What the solids
 * weigh less than the frame's own mass is taken as screws and nuts.
 */
export function frameGeometry(frame: PartOf<'frame'>, layout: Layout, sizes: FrameSizes): FrameGeometry {
  const onePiece = frame.arms.construction === 'one-piece plate';
  const faceZ = -sizes.thickness / 2;
  const topPlateZ = faceZ - sizes.standoffHeight - sizes.topThickness / 2;
  const bottomZ = onePiece ? 0 : (sizes.thickness + sizes.bottomThickness) / 2;
  const bottomThickness = onePiece ? sizes.thickness : sizes.bottomThickness;
  const outline = rectangle(sizes.bodyLength, sizes.bodyWidth);
  const plate = (name: string, thickness: number, z: number): PlateGeometry => ({
    name,
    outline,
    thickness,
    z,
    cutAway: CUT_AWAY,
  });
  const above = frame.pack.side === 'above';
  const bare: FrameGeometry = {
    construction: frame.arms.construction,
    material: frameMaterial(frame.material),
    arms: buildArms(layout, {
      bodyHalfLength: sizes.bodyLength / 2,
      bodyHalfWidth: sizes.bodyWidth / 2,
      rootWidth: sizes.rootWidth,
      middleWidth: sizes.neckWidth,
      tipWidth: sizes.tipWidth,
      thickness: sizes.thickness,
      padDiameter: sizes.padDiameter,
      clampedLength: sizes.clampedLength,
    }),
    plates: [
      plate('bottom plate', bottomThickness, bottomZ),
      plate('top plate', sizes.topThickness, topPlateZ),
    ],
    standoffs: standoffs(sizes, faceZ),
    guards: frame.guards ? guardsOf(frame, layout, frame.guards) : [],
    pack: {
      side: frame.pack.side,
      faceZ: above ? topPlateZ - sizes.topThickness / 2 : bottomZ + bottomThickness / 2,
      strapRange: [-sizes.bodyLength / 2, sizes.bodyLength / 2],
      maxLength: sizes.packMaxLength,
      maxWidth: sizes.packMaxWidth,
    },
    stack: {
      place: [0, 0],
      faceZ,
      headroom: sizes.standoffHeight,
      patterns: frame.stackPatterns,
    },
    ...cameraPlace(frame, sizes, faceZ),
    hardwareMass: 0,
  };
  const solids = framePrimitives(bare, layout).reduce((sum, item) => sum + itemMass(item), 0);
  return { ...bare, hardwareMass: Math.max(0, frame.mass.value - solids) };
}

function cameraPlace(
  frame: PartOf<'frame'>,
  sizes: FrameSizes,
  faceZ: number,
): { readonly camera?: CameraPlace } {
  const width = frame.cameraWidths[0];
  if (width === undefined) return {};
  const tilt = frame.cameraTilt ?? { min: 0, max: 0.7 };
  return {
    camera: {
      place: [sizes.bodyLength / 2 - 0.004, 0, faceZ - sizes.standoffHeight / 2],
      width,
      tiltRange: [tilt.min, tilt.max],
    },
  };
}

function guardsOf(
  frame: PartOf<'frame'>,
  layout: Layout,
  guards: NonNullable<PartOf<'frame'>['guards']>,
): readonly GuardGeometry[] {
  return layout.motors
    .filter(({ coaxialWith, propSide }) => coaxialWith === undefined || propSide === 'above')
    .map(({ name }) => ({
      motor: name,
      innerRadius: frame.maxPropeller / 2 + guards.tipGap,
      wallThickness: guards.thickness,
      height: guards.height,
      z: -guards.height / 2,
      density: GUARD_DENSITY,
    }));
}

function standoffs(sizes: FrameSizes, faceZ: number): readonly StandoffGeometry[] {
  const perSide = Math.ceil(sizes.standoffCount / 2);
  return Array.from({ length: sizes.standoffCount }, (_, index): StandoffGeometry => {
    const along = perSide === 1 ? 0 : Math.floor(index / 2) / (perSide - 1) - 0.5;
    const place: Point2 = [
      along * (sizes.bodyLength - 0.008),
      (index % 2 === 0 ? 0.5 : -0.5) * (sizes.bodyWidth - 0.006),
    ];
    return {
      place,
      topZ: faceZ - sizes.standoffHeight,
      bottomZ: faceZ,
      outerDiameter: 0.005,
      innerDiameter: 0.0025,
      ...ALUMINIUM,
    };
  });
}

function rectangle(length: number, width: number): readonly Point2[] {
  const [x, y] = [length / 2, width / 2];
  return [
    [x, y],
    [-x, y],
    [-x, -y],
    [x, -y],
  ];
}
