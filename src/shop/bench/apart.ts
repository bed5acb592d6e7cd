/** A header that is several, one to a bank: those that no collector joins, each with its own runners, collectors and flanges. */
import type { Header } from '../../../geometry';

export function headersApart(header: Header): Header[] {
  const joined = new Map<string, string>();
  const root = (id: string): string => {
    const up = joined.get(id);
    return up === undefined || up === id ? id : root(up);
  };
  for (const { runner } of header.runners)
    if ('merge' in runner.from) joined.set(root(`${runner.from.merge}`), root(runner.to.merge));
  // A flange that holds tubes of two collectors joins those too.
  for (const { ports } of header.design.flanges ?? []) {
    const ends = header.runners.flatMap(({ runner: { from, to } }) =>
      'port' in from && ports.includes(from.port) ? [to.merge] : [],
    );
    for (const end of ends.slice(1)) joined.set(root(end), root(ends[0]!));
  }
  const roots = [...new Set(header.runners.map(({ runner }) => root(runner.to.merge)))];
  if (roots.length < 2) return [header];
  return roots.map((one) => {
    const runners = header.runners.filter(({ runner }) => root(runner.to.merge) === one);
    const ports = new Set(runners.flatMap(({ runner: { from } }) => ('port' in from ? [from.port] : [])));
    const flanges = (header.design.flanges ?? []).filter((f) => f.ports.some((id) => ports.has(id)));
    return {
      ...header,
      runners,
      ports: new Map([...header.ports].filter(([id]) => ports.has(id))),
      merges: new Map([...header.merges].filter(([id]) => root(id) === one)),
      design: { ...header.design, flanges },
    };
  });
}
