import { armThicknessLow, speedConstantWindow } from '../windows.ts';
import { fails, fits, inches, mm, mmList } from './say.ts';
import type { FitContext, FitRule, FitVerdict } from './types.ts';

/** Hole circles are cut to a few tenths. */
const CIRCLE_TOLERANCE = 0.4e-3;
const rpmPerVolt = Math.PI / 30;

/** One verdict for each different motor on board, named by its first place. */
function perMotor(
  { craft }: FitContext,
  judge: (motor: (typeof craft.motors)[number], index: number) => FitVerdict | undefined,
): readonly FitVerdict[] {
  const seen = new Set<string>();
  const verdicts: FitVerdict[] = [];
  craft.motors.forEach((motor, index) => {
    if (seen.has(motor.partId)) return;
    seen.add(motor.partId);
    const verdict = judge(motor, index);
    if (verdict !== undefined) verdicts.push(verdict);
  });
  return verdicts;
}

const placeOf = (motor: FitContext['craft']['motors'][number]) => ({
  x: motor.place.position[0],
  y: motor.place.position[1],
});

export const motorRules: readonly FitRule[] = [
  {
    id: 'motor-hole-circle',
    title: "motor holes against the arm's",
    look: (context) =>
      perMotor(context, (motor) => {
        const frameCircles = context.craft.parts.frame.motorCircles;
        const own = motor.fit.mountCircles;
        const match = own.find((circle) =>
          frameCircles.some((other) => Math.abs(other - circle) < CIRCLE_TOLERANCE),
        );
        return match === undefined
          ? fails(
              'stop',
              `The motor's holes stand on ${mmList(own)}, the arm's on ${mmList(frameCircles)}: it cannot be screwed on.`,
              `Take a motor with a ${mmList(frameCircles)} circle, or a frame drilled for ${mmList(own)}.`,
              ['motors', 'frame'],
              { place: placeOf(motor) },
            )
          : fits(`Motor and arm share the ${mm(match)} circle.`, ['motors', 'frame']);
      }),
  },
  {
    id: 'motor-screw-into-winding',
    title: 'motor screws against the winding',
    look: (context) =>
      perMotor(context, (motor, index) => {
        const length = context.craft.build.screws.motorLength;
        if (length === undefined) return undefined;
        const thickness = armThickness(context, index);
        const reach = length - thickness;
        const { threadDepth } = motor.fit;
        const number = { value: reach, limit: threadDepth, quantity: 'length' as const };
        return reach > threadDepth
          ? fails(
              'stop',
              `A ${mm(length)} screw through a ${mm(thickness)} arm reaches ${mm(reach)} into the motor; it takes ${mm(threadDepth)} before the winding.`,
              `Use ${mm(Math.floor((thickness + Math.min(threadDepth, 3e-3)) * 1000 + 1e-6) / 1000)} screws: arm plus 2 to 3 mm at most.`,
              ['motors', 'frame'],
              { number, place: placeOf(motor) },
            )
          : fits(`Screws reach ${mm(reach)} into the motor of ${mm(threadDepth)} there is.`, ['motors'], {
              number,
            });
      }),
  },
  {
    id: 'motor-screw-short',
    title: 'motor screws hold',
    look: (context) =>
      perMotor(context, (motor, index) => {
        const length = context.craft.build.screws.motorLength;
        if (length === undefined) {
          return fails(
            'note',
            'The length of the motor screws is not told, so whether they hold or reach the winding is not checked.',
            `Give screws.motorLength: arm (${mm(armThickness(context, index))}) plus 2 to 3 mm.`,
            ['motors', 'frame'],
          );
        }
        const reach = length - armThickness(context, index);
        const least = motor.fit.mountScrew === 'M3' ? 2e-3 : 1.5e-3;
        const number = { value: reach, limit: least, quantity: 'length' as const };
        return reach < least - 1e-6
          ? fails(
              reach < 1e-3 ? 'stop' : 'risk',
              `Motor screws hold by ${mm(Math.max(reach, 0))} of thread only.`,
              `Use screws of ${mm(armThickness(context, index) + least)} or a little longer.`,
              ['motors', 'frame'],
              { number, place: placeOf(motor) },
            )
          : fits(`Screws hold by ${mm(reach)} of thread.`, ['motors'], { number });
      }),
  },
  {
    id: 'motor-screw-thread',
    title: "motor's thread for its circle",
    look: (context) =>
      perMotor(context, (motor) => {
        const largest = Math.max(...motor.fit.mountCircles);
        const usual = largest < 10e-3 ? ['M1.4', 'M1.6', 'M2'] : largest < 14e-3 ? ['M2'] : ['M3'];
        const frameScrew = context.craft.parts.frame.motorScrew;
        if (frameScrew !== undefined && frameScrew !== motor.fit.mountScrew) {
          return fails(
            'risk',
            `The arm's holes are for ${frameScrew}, the motor is threaded ${motor.fit.mountScrew}.`,
            frameScrew > motor.fit.mountScrew
              ? 'Use washers under the heads.'
              : 'Drill the arm, in a wet dust-free way, or take another motor.',
            ['motors', 'frame'],
          );
        }
        return usual.includes(motor.fit.mountScrew)
          ? fits(`${motor.fit.mountScrew} on a ${mm(largest)} circle.`, ['motors'])
          : fails(
              'note',
              `${motor.fit.mountScrew} on a ${mm(largest)} circle is unusual: 9 and 12 mm circles go with M2, 16 and 19 with M3.`,
              'Check the listing before ordering screws.',
              ['motors'],
            );
      }),
  },
  {
    id: 'motor-cells',
    title: 'motor against the pack',
    look: (context) =>
      perMotor(context, (motor, index) => {
        const range = context.craft.parts.motors[index]?.cells;
        if (range === undefined) return undefined;
        const { cells } = context.craft.parts.pack;
        const number = { value: cells, limit: range.max, quantity: 'count' as const };
        if (cells > range.max) {
          return fails(
            'stop',
            `A ${cells}S pack on a motor made for ${range.min}S to ${range.max}S: it overspeeds and burns.`,
            `Take a pack of at most ${range.max} cells or a motor of lower K_V.`,
            ['motors', 'pack'],
            { number, place: placeOf(motor) },
          );
        }
        return cells < range.min
          ? fails(
              'risk',
              `A ${cells}S pack on a motor made for ${range.min}S to ${range.max}S: it will feel weak.`,
              `Take ${range.min}S or a motor of higher K_V.`,
              ['motors', 'pack'],
              { number },
            )
          : fits(`${cells}S suits a motor made for ${range.min}S to ${range.max}S.`, ['motors', 'pack'], {
              number,
            });
      }),
  },
  {
    id: 'speed-constant-window',
    title: 'K_V for the propeller and pack',
    look: (context) =>
      perMotor(context, (motor) => {
        const rotor = context.craft.rotors[motor.rotor];
        if (rotor === undefined) return undefined;
        const { cells } = context.craft.parts.pack;
        const window = speedConstantWindow(rotor.blade.diameter, cells);
        if (window === undefined) return undefined;
        const { speedConstant } = motor.model;
        const kv = Math.round(speedConstant / rpmPerVolt);
        const low = Math.round(window.low / rpmPerVolt);
        const high = Math.round(window.high / rpmPerVolt);
        const size = inches(rotor.blade.diameter);
        return speedConstant < window.low || speedConstant > window.high
          ? fails(
              'risk',
              `K_V ${kv} rpm/V with ${size} propellers on ${cells}S; the trade flies ${low} to ${high}.`,
              kv > high
                ? 'Lower K_V, fewer cells or less pitch keeps the currents down.'
                : 'Higher K_V or more cells.',
              ['motors', 'propellers', 'pack'],
            )
          : fits(`K_V ${kv} rpm/V is inside ${low} to ${high} for ${size} on ${cells}S.`, ['motors']);
      }),
  },
  {
    id: 'motor-current',
    title: 'motor current at full throttle',
    look: ({ craft, figures }) => {
      const limit = craft.motors.reduce(
        (least, motor) => Math.min(least, motor.model.limits.current ?? Number.POSITIVE_INFINITY),
        Number.POSITIVE_INFINITY,
      );
      const peak = figures.peakMotorCurrent;
      if (peak === undefined || !Number.isFinite(limit)) return [];
      const number = { value: peak, limit, quantity: 'current' as const };
      return [
        peak > limit
          ? fails(
              peak > 1.25 * limit ? 'stop' : 'risk',
              `At full throttle a motor draws ${peak.toFixed(0)} A; it is rated ${limit.toFixed(0)} A for a burst.`,
              'Less pitch, a smaller propeller, fewer cells or a larger motor; short bursts only until then.',
              ['motors', 'propellers', 'pack'],
              { number },
            )
          : fits(`${peak.toFixed(0)} A at full throttle of ${limit.toFixed(0)} A rated.`, ['motors'], {
              number,
            }),
      ];
    },
  },
  {
    id: 'arm-thickness',
    title: 'arm thickness for the propeller',
    look: (context) => {
      const { craft } = context;
      const thickness = armThickness(context, 0);
      const diameter = Math.max(...craft.rotors.map((rotor) => rotor.blade.diameter));
      // Moulded and guarded frames carry the load in their rings.
      if (craft.frame.guards.length > 0) return [];
      const least = armThicknessLow(diameter);
      const number = { value: thickness, limit: least, quantity: 'length' as const };
      return [
        thickness < least - 1e-6
          ? fails(
              'risk',
              `Arms of ${mm(thickness)} under ${inches(diameter)} propellers; the trade cuts ${mm(least)} or more.`,
              'Take thicker arms, or keep spares and expect more shake.',
              ['frame'],
              { number },
            )
          : fits(`Arms of ${mm(thickness)} for ${inches(diameter)} propellers.`, ['frame'], { number }),
      ];
    },
  },
  {
    id: 'servo-tail',
    title: 'tail servo',
    look: ({ craft }) =>
      craft.layout.kind === 'tri'
        ? [
            fails(
              'note',
              'Three motors yaw by tilting the tail motor with a servo: a part that wears and has no spare on board.',
              'Choose a metal-geared servo and keep one in the box.',
              ['frame', 'motors'],
            ),
          ]
        : [],
  },
];

/** Thickness of the arm that carries a motor [m]. */
function armThickness({ craft }: FitContext, motorIndex: number): number {
  const name = craft.motors[motorIndex]?.place.name;
  const arm = craft.frame.arms.find((each) => name !== undefined && each.motors.includes(name));
  return arm?.thickness ?? craft.parts.frame.arms.thickness.value;
}
