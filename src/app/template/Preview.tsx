/** The strip as the paper will show it, without the page round it, scaled to the room there is. */
import { heightOf, widthOf } from '../../formats/drawing/drawing';
import { group } from '../../formats/drawing/items';
import { writeSvg } from '../../formats/svg/write';
import { type StripOptions, templateStrip } from '../../shop/templates/strip';
import type { WishedTemplate } from '../../shop/templates/wishes';

/** White round it, mm. */
const EDGE = 3;

export function Preview({ made, options }: { readonly made: WishedTemplate; readonly options: StripOptions }) {
  const { items, box } = templateStrip(made.cut, options);
  const drawing = {
    width: widthOf(box) + 2 * EDGE,
    height: heightOf(box) + 2 * EDGE,
    items: [group([EDGE - box.left, EDGE - box.top], items)],
  };
  const svg = writeSvg(drawing, made.cut.title);
  return <img className="template-strip" alt={made.cut.title} src={`data:image/svg+xml,${encodeURIComponent(svg)}`} />;
}
