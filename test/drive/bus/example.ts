import type { BrakedMotors } from '../../../src/drive/busBraking.ts';
import type { Bus } from '../../../src/drive/busCircuit.ts';

/** Of the size of a 5 inch four on 6S; round numbers of ours. */
export const motors: BrakedMotors = {
  count: 4,
  angularSpeed: 3200,
  speedConstant: 180,
  resistance: 0.1,
  resistanceSlope: 0.1 / 3200,
  idleConstant: 0.6,
  idleSlope: 0.6 / 3200,
  torqueFactor: 1.3e-8,
  rotatingInertia: 6.4e-6,
};

export const ceramic = { capacitance: 160e-6, resistance: 0.005 };
export const electrolytic = { capacitance: 1000e-6, resistance: 0.03 };

export const bus: Bus = {
  packVoltage: 25.2,
  sourceResistance: 0.025,
  inductance: 54e-9,
  capacitors: [ceramic, electrolytic],
};
