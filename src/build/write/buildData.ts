import type { Build } from '../schema/build.ts';
import { givenData, quantityText } from './quantityText.ts';

type Layout = NonNullable<Build['frame']['layout']>;
type Place = NonNullable<Build['cameras'][number]['place']>;
export type FileData = Readonly<Record<string, unknown>>;

/**
 * A build as its file holds it, every value with its unit: plain data for `yamlText` or JSON. What
 * stands at its default is left out. `readBuild` of it gives the same build.
 */
export function buildData(build: Build): FileData {
  const { frame, motors, propellers, controllers, flightController, pack, wiring, screws, measured } = build;
  return tidied({
    format: build.format,
    name: build.name,
    note: build.note,
    frame: seat({
      part: frame.part,
      layout: frame.layout && layoutData(frame.layout),
      armThickness: length(frame.armThickness),
    }),
    motors: seat({ part: motors.part, except: listed(motors.except) }),
    propellers: seat({
      part: propellers.part,
      side: propellers.side === 'above' ? undefined : propellers.side,
      except: listed(propellers.except),
    }),
    controllers: controllers && seat(controllers),
    flightController: seat(flightController),
    pack: seat({
      part: pack.part,
      side: pack.side,
      offset: pack.offset === 0 ? undefined : length(pack.offset),
      cycles: pack.cycles === 0 ? undefined : pack.cycles,
    }),
    cameras: listed(
      build.cameras.map(({ part, role, tilt, place }) =>
        tidied({
          part,
          role,
          tilt: tilt === 0 ? undefined : quantityText(tilt, 'angle'),
          place: placeData(place),
        }),
      ),
    ),
    videoLink:
      build.videoLink &&
      seat({
        part: build.videoLink.part,
        outputPower:
          build.videoLink.outputPower === undefined
            ? undefined
            : quantityText(build.videoLink.outputPower, 'power', 'mW'),
        place: placeData(build.videoLink.place),
      }),
    receiver: build.receiver && seat({ part: build.receiver.part, place: placeData(build.receiver.place) }),
    antennas: listed(build.antennas.map(({ part, place }) => seat({ part, place: placeData(place) }))),
    extras: listed(
      build.extras.map(({ part, count, place }) =>
        seat({ part, count: count === 1 ? undefined : count, place: placeData(place) }),
      ),
    ),
    wiring: filled({
      packLead: leadData(wiring.packLead),
      motorLead: leadData(wiring.motorLead),
      supplyLead: leadData(wiring.supplyLead),
      connector: wiring.connector,
    }),
    screws: filled({ motorLength: length(screws.motorLength) }),
    measured: filled({
      mass: measured.mass && givenData(measured.mass, 'mass'),
      balanceX: measured.balanceX && givenData(measured.balanceX, 'length'),
    }),
  });
}

const length = (value: number | undefined): string | undefined =>
  value === undefined ? undefined : quantityText(value, 'length');

function layoutData(layout: Layout): FileData {
  return Object.fromEntries(
    Object.entries(layout).map(([key, value]) => [
      key,
      typeof value === 'number' ? length(value) : motorsData(value),
    ]),
  );
}

const motorsData = (value: string | readonly { readonly x: number; readonly y: number }[] | undefined) =>
  Array.isArray(value) ? value.map((motor) => ({ ...motor, x: length(motor.x), y: length(motor.y) })) : value;

const placeData = (place: Place | undefined): FileData | undefined =>
  place && { x: length(place.x), y: length(place.y), z: length(place.z) };

const leadData = (lead: Build['wiring']['packLead']): FileData | undefined =>
  lead && { area: quantityText(lead.area, 'area'), length: length(lead.length) };

const listed = <T>(values: readonly T[]): readonly T[] | undefined =>
  values.length === 0 ? undefined : values;

/** Without the fields that hold nothing. */
const tidied = (data: FileData): FileData =>
  Object.fromEntries(Object.entries(data).filter(([, value]) => value !== undefined));

const filled = (data: FileData): FileData | undefined => {
  const kept = tidied(data);
  return Object.keys(kept).length === 0 ? undefined : kept;
};

/** A seat in short, its part's id alone, when there is nothing more to say. */
function seat(data: FileData): FileData | unknown {
  const kept = tidied(data);
  return Object.keys(kept).length === 1 ? kept.part : kept;
}
