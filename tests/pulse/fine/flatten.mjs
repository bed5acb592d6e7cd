/** A rig document as the plain numbers that fine.c reads. No checks: what is wrong here is wrong in the rig. SI units. */
const SIDE = { start: 0, finish: 1 };
const KIND = { closed: 'c', open: 'o', through: 't', junction: 'j', vessel: 'v' };

export function flatten(rig) {
  const place = new Map(rig.pipes.map((pipe, i) => [pipe.id, i]));
  const side = ([pipe, end]) => [place.get(pipe), SIDE[end]];
  const pipes = rig.pipes.map((pipe) => [
    [pipe.length, pipe.cells, pipe.diameter.length, ...pipe.diameter.flat()],
    typeof pipe.friction === 'number' ? [pipe.friction, -1] : [0, pipe.friction.roughness],
    [pipe.wallTemperature ?? -1, pipe.initial.length],
    ...pipe.initial.map((s) => [s.from, s.to, s.pressure, s.temperature, s.velocity]),
  ]);
  const ends = rig.ends.map((end) => {
    const sides = end.kind === 'junction' ? end.at : [end.at];
    const common = [KIND[end.kind], sides.length, ...sides.flatMap(side)];
    if (end.kind !== 'vessel') return common;
    const { volume, pressure, temperature, dischargeCoefficient, area } = end;
    return [...common, volume, pressure, temperature, dischargeCoefficient, area.length, ...area.flat()];
  });
  const { gas, ambient } = rig;
  const all = [
    [gas.gamma, gas.gasConstant, ambient.pressure, ambient.temperature],
    [pipes.length, ...pipes],
    [ends.length, ...ends],
    [rig.duration, rig.sample, rig.probes.length, ...rig.probes.map((p) => [place.get(p.pipe), p.x])],
  ];
  return `${all.flat(Infinity).join('\n')}\n`;
}
