import type { Part } from '../build/schema/part.ts';

const mm = (metres: number) => `${+(metres * 1000).toFixed(1)} mm`;
const inch = (metres: number) => `${+(metres / 0.0254).toFixed(2)} in`;
const rpmPerVolt = (constant: number) => `${Math.round((constant * 30) / Math.PI)} rpm/V`;

/** The few facts one chooses a part by, in trade units. */
export function factsOfPart(part: Part): string {
  switch (part.kind) {
    case 'frame':
      return `${part.layout.kind}, up to ${inch(part.maxPropeller)}, ${part.arms.construction} of ${mm(part.arms.thickness.value)}, pack ${part.pack.side}`;
    case 'motor':
      return `${mm(part.stator.diameter)} x ${mm(part.stator.height)}, ${rpmPerVolt(part.speedConstant.value)}`;
    case 'propeller':
      return `${inch(part.size.diameter)} x ${inch(part.size.pitch)}, ${part.size.bladeCount} blades`;
    case 'pack':
      return `${part.cells}S ${part.chemistry} ${Math.round(part.capacity.value / 3.6)} mAh, ${part.connector}`;
    case 'controller':
      return `${part.form}, ${part.current.value} A, ${part.cells.min} to ${part.cells.max}S`;
    case 'flightController':
      return `${mm(part.pattern)} square, ${part.cells.min} to ${part.cells.max}S, ${part.serialPorts} serial ports`;
    case 'camera':
      return `${part.roles.join(' and ')}, ${mm(part.width)}${part.system === undefined ? '' : `, ${part.system}`}`;
    case 'videoLink':
      return `${part.system}, ${Math.round(part.outputPower * 1000)} mW`;
    case 'receiver':
    case 'transmitter':
      return part.link;
    case 'goggles':
      return part.system;
    case 'antenna':
      return `${part.for}, ${(part.frequency / 1e9).toFixed(2)} GHz, ${part.plug}`;
    case 'mount':
      return `holds ${part.holds}, ${part.material}`;
    case 'strap':
      return `${mm(part.width)} x ${mm(part.length)}`;
    case 'connector':
      return `${part.plug}, ${part.current.value} A`;
    case 'wire':
      return `${+(part.area * 1e6).toFixed(2)} mm2, per metre`;
    case 'capacitor':
      return `${Math.round(part.capacitance.value * 1e6)} uF, ${part.voltage} V`;
    case 'screws':
      return `${part.thread} x ${mm(part.length)}`;
    case 'guardSet':
      return `for ${inch(part.forPropeller)}`;
    case 'charger':
      return `${part.power.value} W, ${part.cells.min} to ${part.cells.max}S`;
    case 'bench':
      return part.use;
    case 'positionReceiver':
    case 'beeper':
    case 'lamp':
      return '';
  }
}
