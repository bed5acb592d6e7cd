/** What a builder must know, each a press from its place: what stops the work first, in the colour of what fails. */
import type { Remark } from '../../../shop/making/report';
import { goToRemark, goWords } from '../go';

export function Remarks({ remarks, label }: { readonly remarks: readonly Remark[]; readonly label: string }) {
  const once = [...new Map(remarks.map((r) => [`${r.where} ${r.message}`, r])).values()];
  const [stops, others] = [once.filter((r) => r.stops), once.filter((r) => !r.stops)];
  if (once.length === 0) return null;
  return (
    <ul className="make-remarks" aria-label={label}>
      {[...stops, ...others].map((remark) => (
        <li key={`${remark.where} ${remark.message}`} className={remark.stops ? 'stops' : undefined}>
          <span>{remark.message}</span>
          <Go where={remark.where} />
        </li>
      ))}
    </ul>
  );
}

function Go({ where }: { readonly where: string }) {
  const words = goWords(where);
  if (words === null) return null;
  return (
    <button type="button" className="link" onClick={() => goToRemark(where)}>
      {words}
    </button>
  );
}
