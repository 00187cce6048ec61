import { Bench } from 'tinybench';
import { standardAtmosphere } from '../src/air/standardAtmosphere.ts';
import { forwardCraft } from '../src/flight/forward/forwardPoint.ts';
import { topSpeed } from '../src/flight/forward/speeds.ts';
import { hoverStory } from '../src/flight/hoverStory.ts';
import { styles } from '../src/flight/styles.ts';
import { neutralLevers } from '../src/flight/types.ts';
import { bladeFromNameplate } from '../src/rotor/blade.ts';
import { buildRotorMap, emptyReading, readRotorMap } from '../src/rotor/rotorMap.ts';
import { sectionTables } from '../src/rotor/sections.ts';
import { exampleQuad } from '../test/flight/exampleModel.ts';

/**
 * One evaluation of the hover story (trim, punch, endurance, freestyle minutes, heat) with a real rotor map, warm.
 * `assess` runs it once for each of about 15 levers inside 5 ms: aim 0.15 to 0.3 ms.
 */
const air = standardAtmosphere({ height: 0 });
const blade = bladeFromNameplate({ diameter: 5.1 * 0.0254, pitch: 4.3 * 0.0254, bladeCount: 3 });
const map = buildRotorMap(blade, sectionTables(), air, 'full');
if (!map.ok) throw new Error(map.reason);
const reading = emptyReading();
const quad = exampleQuad();
const model = {
  ...quad,
  stations: quad.stations.map((station) => ({
    ...station,
    rotor: (angularSpeed: number, axialSpeed: number, out: { thrust: number; torque: number }): void => {
      readRotorMap(map.value, angularSpeed, axialSpeed, air, reading);
      out.thrust = reading.thrust;
      out.torque = reading.torque;
    },
  })),
};
const noseHeavy = { ...model, centreOfGravity: [0.006, 0.002, 0.01] as const };
const drag = {
  front: { area: 0.008, coefficient: 1.1 },
  side: { area: 0.009, coefficient: 1.1 },
  top: { area: 0.022, coefficient: 1.1 },
};
const craft = forwardCraft(model, neutralLevers, drag);
if (!craft.ok) throw new Error(craft.reason);

const bench = new Bench({ time: 1000, warmupTime: 500 });
bench
  .add('hover story, balanced', () => {
    hoverStory(model, neutralLevers, [styles.freestyle]);
  })
  .add('hover story, nose heavy', () => {
    hoverStory(noseHeavy, neutralLevers, [styles.freestyle]);
  })
  .add('top speed', () => {
    topSpeed(craft.value, 0.5);
  });
await bench.run();
for (const { name, result } of bench.tasks) {
  if ('latency' in result) console.log(`${name}: median ${result.latency.p50.toFixed(3)} ms`);
}
