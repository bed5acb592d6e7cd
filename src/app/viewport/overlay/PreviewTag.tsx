/** Says that what is drawn is a layout to choose from, and not the document. */
import { usePreviewName } from '../../route/shown';

export function PreviewTag() {
  const name = usePreviewName();
  return name && <p className="viewport-preview">{name}, not kept yet</p>;
}
