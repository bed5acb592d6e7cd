/** A probe's values as an SVG path: where there are more than pixels, the first, least, greatest and last of each pixel, so that no peak is lost. */

/** @param toX @param toY px from a time and a value */
export function curvePath(
  times: ArrayLike<number>,
  values: ArrayLike<number>,
  toX: (time: number) => number,
  toY: (value: number) => number,
): string {
  const count = Math.min(times.length, values.length);
  const steps: string[] = [];
  const put = (k: number) => steps.push(`${toX(times[k]!).toFixed(2)} ${toY(values[k]!).toFixed(2)}`);
  for (let k = 0; k < count; ) {
    const pixel = Math.floor(toX(times[k]!));
    let [next, low, high] = [k, k, k];
    for (; next < count && Math.floor(toX(times[next]!)) === pixel; next++) {
      if (values[next]! < values[low]!) low = next;
      if (values[next]! > values[high]!) high = next;
    }
    for (const at of new Set([k, low, high, next - 1].sort((a, b) => a - b))) put(at);
    k = next;
  }
  return steps.length > 0 ? `M${steps.join('L')}` : '';
}
