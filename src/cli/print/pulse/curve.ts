/** A torque curve for people: a row a speed, the peaks, then what it stands on. rpm, N m, kW, %. */
import { isAnswer, type Peak, type Subject, type Summary } from '../../../pulse/forecast/curve';
import type { Band } from '../../../pulse/forecast/speeds';
import type { TorqueCurve } from '../../../pulse/forecast/types';
import { columns } from '../columns';

export function curveTable(curve: TorqueCurve): string {
  const rows = curve.map((point) =>
    isAnswer(point)
      ? [
          ...[rpmText(point.rpm), point.torque.toFixed(1), (point.power / 1000).toFixed(1)],
          ...[(100 * point.volumetricEfficiency).toFixed(1), (100 * point.residual).toFixed(1)],
          point.settled ? '' : 'not settled',
        ]
      : [rpmText(point.rpm), '', '', '', '', point.failed],
  );
  const head = ['rpm', 'torque N m', 'power kW', 'VE %', 'residual %', ''];
  return columns([head, ...rows], ['right', 'right', 'right', 'right', 'right', 'left']);
}

export const rpmText = (rpm: number): string => String(Math.round(rpm));

export const bandText = ([low, high]: Band): string => `${rpmText(low)} to ${rpmText(high)} rpm`;

/** One line each: peaks, and the mean over the band, which is the area under the curve over its width. One speed alone has neither. */
export function summaryLines({ torque, power, mean, covered, answered }: Summary): string[] {
  if (answered === 1) return [];
  if (torque && torque.value <= 0) return ['  no speed gives torque: the engine would have to be driven'];
  return [
    ...(torque ? [`  peak torque ${peakText(torque, 1, 'N m')}`] : []),
    ...(power ? [`  peak power ${peakText(power, 1000, 'kW')}`] : []),
    ...(mean !== null && covered ? [`  mean torque ${mean.toFixed(1)} N m from ${bandText(covered)}`] : []),
  ];
}

function peakText({ rpm, value, atEnd }: Peak, per: number, unit: string): string {
  // Between the speeds followed it is only known to within tens of rpm.
  const at = atEnd ? rpmText(rpm) : rpmText(10 * Math.round(rpm / 10));
  const more = atEnd ? ', the last speed followed on that side: it may lie beyond' : '';
  return `${(value / per).toFixed(1)} ${unit} at ${at} rpm${more}`;
}

export const countText = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;

/** How the engine is called where nothing else names it. */
export function engineText({ engine }: Pick<Subject, 'engine'>): string {
  const mm = (m: number): string => String(Number((1000 * m).toFixed(1)));
  return `${countText(engine.cylinders.length, 'cylinder')}, ${mm(engine.bore)} × ${mm(engine.stroke)} mm`;
}
