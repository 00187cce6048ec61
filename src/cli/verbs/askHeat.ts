import { flownMeasures } from '../../assess/flownMeasures.ts';
import { hoverFindings } from '../../assess/hoverFindings.ts';
import { wiringHeat } from '../../assess/parts/heat.ts';
import type { Banded } from '../../assess/propagate.ts';
import { stationReports } from '../../assess/stationReports.ts';
import { throttlePoint } from '../../assess/throttlePoint.ts';
import { trimmer } from '../../assess/trimPoint.ts';
import { cellWords } from '../../drive/cellState.ts';
import { formatQuantity } from '../../units/formatQuantity.ts';
import { type AskFlightOptions, flightOf } from '../flightOf.ts';
import type { Io } from '../io.ts';
import { partJson } from '../print/answerText.ts';
import { bandedIn, limitCell, OPEN_NOTE } from '../print/bandedCell.ts';
import { narrowTable } from '../print/narrow.ts';
import { measuresText, withFindings } from '../print/partText.ts';

type Figures = Readonly<Record<string, Banded>>;

/** `ask heat`: motors in hover and held at full throttle against their limits, controllers, wires, plug and bus. */
export function askHeat(file: string, options: AskFlightOptions, io: Io): void {
  const context = flightOf(file, options, io);
  const { craft, brief, flight } = context;
  const wiring = wiringHeat.run(context);
  const flown = flownMeasures(craft, brief, flight);
  const { story } = flight.told;
  const measures = [...flown.filter(({ sheet }) => sheet === 'heat'), ...wiring.measures];
  const stations = stationReports(craft, story);
  const findings = [
    ...hoverFindings(story, flown, stations, brief).filter(({ sheet }) => sheet === 'heat'),
    ...wiring.findings,
  ];
  const trims = trimmer(context);
  const hover = trims.ok ? trims.value({ speed: 0, climb: 0, charge: 0.5 }) : trims;
  const full = throttlePoint(craft, flight.model, () => flight.doubt.atFull ?? flight.doubt, 1, 0.9);
  const motors = flight.model.stations.map(({ name, motor }, i) => ({
    name,
    limits: motor.limits,
    hover: hover.ok ? (hover.value.figures.motors[i] ?? {}) : {},
    fullThrottle: full.ok ? (full.value.figures.motors[i] ?? {}) : {},
  }));
  if (options.json) {
    io.writeOut(partJson({ measures, findings }, { motors }));
    return;
  }
  const cell = flown.find(({ id }) => id === 'full-throttle-cell-voltage');
  // In words already where the pack gives out.
  const last = cell && (cell.words ?? cellWords(flight.model.pack, cell.value));
  const header = ['motor', 'winding degC', 'case degC', 'controller loses W', 'too hot after'];
  const rows = (of: (motor: (typeof motors)[number]) => Figures, title: string) =>
    narrowTable(
      [title, ...header.slice(1)],
      motors.map((motor) => [motor.name, ...cellsOf(of(motor))]),
      header.map((_, i) => (i === 0 ? 'left' : 'right')),
    );
  const shown = [
    rows(({ hover: at }) => at, 'settled in hover'),
    rows(({ fullThrottle: at }) => at, 'held at full throttle'),
  ];
  const starred = shown.some((table) => table.includes('*'));
  const tables = [
    ...shown,
    limitsLine(motors),
    starred ? OPEN_NOTE : '',
    'Held at full throttle from the temperature of the air; out of a hover it takes less, as below.',
    full.ok ? (full.value.cells ?? '') : `No such full throttle: ${full.reason}.`,
    last === undefined ? '' : `Last full throttle, down to the landing reserve: ${last}.`,
    measuresText(measures, options.how),
  ];
  io.writeOut(withFindings(tables, findings));
}

const cellsOf = (at: Figures): readonly string[] => [
  bandedIn(at.winding, 'temperature'),
  bandedIn(at.case, 'temperature'),
  bandedIn(at.controllerLoss, 'power'),
  limitCell(at.timeToLimit),
];

/** What winding and case bear, once where all motors are of one kind. */
function limitsLine(
  motors: readonly {
    readonly name: string;
    readonly limits: { readonly windingTemperature: number; readonly caseTemperature: number };
  }[],
): string {
  const says = motors.map(({ limits }) => {
    const [winding, housing] = [limits.windingTemperature, limits.caseTemperature].map((limit) =>
      formatQuantity(limit, 'temperature'),
    );
    return `winding ${winding}, case ${housing}`;
  });
  const alike = new Set(says).size === 1;
  return `Limits: ${alike ? says[0] : motors.map(({ name }, i) => `${name} ${says[i]}`).join('; ')}.`;
}
