import { chemistries } from '../../drive/chemistry.ts';
import { controllerFromNameplate } from '../../drive/controller.ts';
import { packFromNameplate } from '../../drive/packFromNameplate.ts';
import type { ControllerModel, PackModel, WireModel } from '../../drive/types.ts';
import { connectorOfRating } from '../../drive/wire.ts';
import type { Craft, CraftParts, CraftWiring } from '../craft.ts';
import type { Build } from '../schema/build.ts';

/** Copper in flight is warmer than the air [K] (common practice, no source). */
const WIRE_TEMPERATURE = 313.15;
/** What a switching regulator keeps of the power it passes (common practice, no source). */
const REGULATOR_EFFICIENCY = 0.85;
/** A flight controller's own draw when its maker tells none [W] (common practice, no source). */
const BOARD_POWER = 0.8;
/** Continuous rating of pouch packs whose label tells none (common practice, no source). */
export const UNTOLD_RATE = { LiPo: 60, LiHV: 60, 'Li-ion': 8 };

export function controllerModelOf(parts: CraftParts): ControllerModel {
  const part = parts.controllers ?? parts.flightController.builtInController;
  const cells = parts.controllers?.cells ?? parts.flightController.cells;
  if (!part) throw new RangeError('parts: neither controllers nor a built-in controller');
  const model = controllerFromNameplate({
    continuousCurrent: part.current.value,
    maximumVoltage: cells.max * chemistries.LiPo.fullVoltage,
    ...(part.burst ? { burstCurrent: part.burst.value } : {}),
    ...(part.switchingFrequency === undefined ? {} : { pulseFrequency: part.switchingFrequency }),
  });
  return part.resistance ? { ...model, resistance: part.resistance.value } : model;
}

export function packModelOf(build: Build, parts: CraftParts): PackModel {
  const { pack } = parts;
  const cell = pack.cellResistance;
  const whole = cell === undefined ? undefined : (cell.value * pack.cells) / pack.parallel;
  const { model } = packFromNameplate({
    chemistry: pack.chemistry,
    series: pack.cells,
    parallel: pack.parallel,
    capacity: pack.capacity.value,
    labelRate: pack.cRating ?? UNTOLD_RATE[pack.chemistry],
    mass: pack.mass.value,
    cycles: build.pack.cycles,
  });
  return whole === undefined ? model : { ...model, resistance: whole };
}

/**
 * Leads as told, or as the trade would solder them: the pack lead by controller rating (14 AWG from
 * 40 A on, 16 from 25, 20 below), 80 mm, and a plug rated by the controllers too.
 */
export function wiringOf(build: Build, parts: CraftParts): CraftWiring {
  const inferred: string[] = [];
  const rating = (parts.controllers ?? parts.flightController.builtInController)?.current.value ?? 20;
  const told = build.wiring.packLead;
  if (!told) inferred.push('pack lead');
  if (!parts.connector) inferred.push('connector');
  const usual = rating >= 40 ? 2.08e-6 : rating >= 25 ? 1.31e-6 : 0.518e-6;
  const area = told?.area ?? parts.controllers?.leadArea ?? usual;
  const current = parts.connector?.current.value ?? (rating >= 30 ? 60 : rating >= 15 ? 30 : 15);
  const model = connectorOfRating(current);
  const measured = parts.connector?.resistance;
  return {
    main: wire(area, 2 * (told?.length ?? 0.08)),
    connector: measured ? { ...model, resistance: measured.value } : model,
    ...(parts.connector ? { plug: parts.connector.plug } : {}),
    inferred,
  };
}

/** Two of a motor's three leads in series; their length as told, or the arm's. */
export function motorLeadOf(build: Build, area: number, armReach: number): WireModel {
  const told = build.wiring.motorLead;
  return wire(told?.area ?? area, 2 * (told?.length ?? armReach + 0.02));
}

/** Bus to controller: none on a four-in-one; half the arm to a single one. */
export function supplyLeadOf(build: Build, parts: CraftParts, armReach: number): WireModel {
  if (parts.controllers?.form !== 'single') return wire(2e-6, 0);
  const told = build.wiring.supplyLead;
  return wire(told?.area ?? 1.31e-6, 2 * (told?.length ?? 0.55 * armReach));
}

function wire(area: number, length: number): WireModel {
  return { area, length, temperature: WIRE_TEMPERATURE };
}

/** What draws power beside the motors, each at its own supply, and all of it at the bus. */
export function avionicsOf(parts: CraftParts): Pick<Craft, 'avionics' | 'avionicsPower'> {
  const avionics: { part: string; name: string; power: number }[] = [];
  const add = (part: string, name: string, power: number | undefined) => {
    if (power !== undefined && power > 0) avionics.push({ part, name, power });
  };
  const { flightController, videoLink, receiver } = parts;
  add('flightController', flightController.name, flightController.power?.value ?? BOARD_POWER);
  for (const [index, camera] of parts.cameras.entries())
    add(`cameras[${index}]`, camera.name, camera.power?.value);
  if (videoLink) add('videoLink', videoLink.name, videoLink.power.value);
  if (receiver) add('receiver', receiver.name, receiver.power.value);
  for (const [index, { part, count }] of parts.extras.entries()) {
    if (part.kind === 'positionReceiver' || part.kind === 'lamp') {
      add(`extras[${index}]`, part.name, part.power && part.power.value * count);
    }
  }
  const sum = avionics.reduce((total, { power }) => total + power, 0);
  return { avionics, avionicsPower: sum / REGULATOR_EFFICIENCY };
}
