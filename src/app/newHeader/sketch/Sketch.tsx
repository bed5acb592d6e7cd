/**
 * Ports and collectors as three small views, redrawn with every number typed: what +X, +Y and +Z are, where the crankshaft
 * runs, how far apart and how high things stand. mm in, pixels out.
 */
import type { EngineForm } from '../../../../shared/engine/form';
import { portPlaces } from '../../../../shared/engine/formPorts';
import type { Vec3 } from '../../../../shared/vec3';
import { useDisplay } from '../../actions/display';
import { lengthNumber } from '../../format';
import { useWidth } from '../../parts/useWidth';
import { CollectorView } from './CollectorView';
import { Dimension } from './Dimension';
import { PortView } from './PortView';
import { directionOf } from './portDirection';
import { type Project, sheetOf, type ViewName } from './projection';

type Props = { readonly form: EngineForm; readonly side: 1 | -1 };

const NAMES: Readonly<Record<ViewName, string>> = {
  plan: 'From above',
  front: 'From the ports',
  end: 'Along the crankshaft',
};
/** Tallest that the sheet may be, px. */
const MOST = 500;
const STUB = 55;

export function Sketch({ form, side }: Props) {
  const [ref, width] = useWidth<HTMLDivElement>();
  return (
    <div ref={ref} className="sketch">
      {width > 0 && <Views form={form} side={side} width={width} />}
      <p className="new-note">
        <strong>+X</strong> along the crankshaft, <strong>+Y</strong> out of the head of bank 1, <strong>+Z</strong> up.
        The chain line is the crankshaft’s direction through the origin.
      </p>
    </div>
  );
}

function Views({ form, side, width }: Props & { readonly width: number }) {
  const display = useDisplay();
  const say = (mm: number) => lengthNumber(mm, display, 0);
  const ports = portPlaces(form).map((p) => ({ ...p, direction: directionOf(form, p.bank) }));
  const stub = (p: (typeof ports)[number]): Vec3 => along(p.position, p.direction, STUB);
  const outlets = form.collectors.map((c) => along(c.position, c.axis, c.length));
  const sheet = sheetOf(
    [[0, 0, 0], ...ports.flatMap((p) => [p.position, stub(p)]), ...form.collectors.map((c) => c.position), ...outlets],
    side,
    width,
    MOST,
  );
  const first = ports[0]!;
  const second = ports.find((p) => p.bank === first.bank && p !== first);
  const { front, plan, end } = sheet.views;
  const inlet = form.collectors[0]!.position;
  const [, y] = first.position;
  return (
    <svg width={width} height={sheet.height} role="img" aria-label="Ports and collectors from three sides">
      {(Object.keys(NAMES) as ViewName[]).map((name) => (
        <View key={name} name={name} project={sheet.views[name]} scale={sheet.scale} form={form} ports={ports} />
      ))}
      {(Object.keys(NAMES) as ViewName[]).map((name) => (
        <text key={name} x={sheet.corners[name][0] - 24} y={sheet.corners[name][1] - 32} className="sketch-name">
          {NAMES[name]}
          {name === 'front' && form.banks.length > 1 && ' of bank 1'}
        </text>
      ))}
      <Chain from={[sheet.corners.plan[0] - 22, plan(ORIGIN)[1]]} to={[sheet.ends.plan[0] + 22, plan(ORIGIN)[1]]} />
      <Chain from={[sheet.corners.front[0] - 22, front(ORIGIN)[1]]} to={[sheet.ends.front[0] + 22, front(ORIGIN)[1]]} />
      <Chain from={end(ORIGIN)} to={[sheet.corners.end[0] - 4, end(ORIGIN)[1]]} />
      <Chain from={end(ORIGIN)} to={[end(ORIGIN)[0], sheet.corners.end[1] - 14]} />
      <Axis
        at={side === 1 ? [sheet.corners.front[0] - 22, front(ORIGIN)[1]] : [sheet.ends.front[0] + 22, front(ORIGIN)[1]]}
        name="+X"
        turn={side === 1 ? 180 : 0}
      />
      <Axis at={[sheet.corners.end[0] - 4, end(ORIGIN)[1]]} name={side === 1 ? '+Y' : '−Y'} turn={180} />
      <Axis at={[end(ORIGIN)[0], sheet.corners.end[1] - 14]} name="+Z" turn={-90} />
      {second && (
        <Dimension
          from={front(first.position)}
          to={front(second.position)}
          off={-sheet.scale * 34 - 6}
          text={say(Math.abs(form.banks[0]!.pitch))}
        />
      )}
      <Dimension
        from={[sheet.ends.front[0], front(first.position)[1]]}
        to={[sheet.ends.front[0], front(inlet)[1]]}
        off={18}
        text={say(Math.abs(inlet[2] - first.position[2]))}
        upright
      />
      <Dimension
        from={[sheet.ends.plan[0], plan([0, y, 0])[1]]}
        to={[sheet.ends.plan[0], plan(inlet)[1]]}
        off={18}
        text={say(Math.abs(inlet[1] - y))}
        upright
      />
      {first.position[2] !== 0 && (
        <Dimension
          from={[sheet.ends.end[0], end(ORIGIN)[1]]}
          to={[sheet.ends.end[0], end(first.position)[1]]}
          off={14}
          text={say(Math.abs(first.position[2]))}
          upright
        />
      )}
    </svg>
  );
}

type ViewProps = {
  readonly name: ViewName;
  readonly project: Project;
  readonly scale: number;
  readonly form: EngineForm;
  readonly ports: readonly {
    readonly cylinder: number;
    readonly bank: number;
    readonly position: Vec3;
    readonly direction: Vec3;
  }[];
};

function View({ name, project, scale, form, ports: all }: ViewProps) {
  // Seen from the ports, the other bank lies right behind this one.
  const ports = name === 'front' ? all.filter((p) => p.bank === all[0]!.bank) : all;
  const collectors = form.collectors.filter((c) => ports.some((p) => c.cylinders.includes(p.cylinder)));
  return (
    <g>
      {collectors.flatMap((c) =>
        ports
          .filter((p) => c.cylinders.includes(p.cylinder))
          .map((p) => {
            const [a, b] = [project(along(p.position, p.direction, STUB)), project(c.position)];
            return <line key={p.cylinder} className="sketch-way" x1={a[0]} y1={a[1]} x2={b[0]} y2={b[1]} />;
          }),
      )}
      {collectors.map((c) => (
        <CollectorView key={c.cylinders.join()} collector={c} form={form} project={project} scale={scale} />
      ))}
      {ports.map((p) => (
        <PortView
          key={p.cylinder}
          number={name === 'end' ? null : p.cylinder}
          facing={name === 'front'}
          opening={form.port.opening}
          at={project(p.position)}
          tip={project(along(p.position, p.direction, STUB))}
          scale={scale}
        />
      ))}
    </g>
  );
}

const ORIGIN: Vec3 = [0, 0, 0];

function along(from: Vec3, direction: Vec3, length: number): Vec3 {
  const size = Math.hypot(...direction) || 1;
  return from.map((x, i) => x + (length * direction[i]!) / size) as unknown as Vec3;
}

type Point = readonly [number, number];
const Chain = ({ from, to }: { readonly from: Point; readonly to: Point }) => (
  <line className="sketch-chain" x1={from[0]} y1={from[1]} x2={to[0]} y2={to[1]} />
);

function Axis({ at: [x, y], name, turn }: { readonly at: Point; readonly name: string; readonly turn: number }) {
  const label: Point = turn === -90 ? [x + 6, y - 2] : turn === 180 ? [x - 14, y - 7] : [x - 2, y - 7];
  return (
    <g className="sketch-axis">
      <path d="M-7 -3.5 0 0-7 3.5" transform={`translate(${x} ${y}) rotate(${turn})`} />
      <text x={label[0]} y={label[1]}>
        {name}
      </text>
    </g>
  );
}
