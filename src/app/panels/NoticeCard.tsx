/** The notice of the moment, and the job under way with its way out. */
import { useJobs } from '../jobs';
import { capital } from '../made/words';
import { dismiss, useNotice } from '../notices';
import { Icon } from './Icon';

/** Laying has a panel of its own to say so. */
const DOING = { balance: 'Balancing…', shop: 'Writing the shop folder…' } as const;

export function NoticeCard() {
  const notice = useNotice((s) => s.notice);
  const running = useJobs((s) => s.running);
  const doing = useJobs((s) => s.doing);
  const cancel = useJobs((s) => s.cancel);
  return (
    <>
      <div role="status">
        {running && running !== 'lay' && (
          <div className="card">
            <div className="card-head">
              <h2 className="card-title">{DOING[running]}</h2>
              <button type="button" className="button" onClick={cancel}>
                Cancel
              </button>
            </div>
            {doing !== null && <p className="quiet">{capital(doing)}…</p>}
            <div className="busy" />
          </div>
        )}
        {notice?.tone === 'plain' && <Card />}
      </div>
      <div role="alert">{notice?.tone === 'fail' && <Card />}</div>
    </>
  );
}

function Card() {
  const notice = useNotice((s) => s.notice)!;
  return (
    <div className={`card${notice.tone === 'fail' ? ' fail' : ''}`}>
      <div className="card-head">
        <h2 className="card-title">{notice.title}</h2>
        <button type="button" className="button icon bare" aria-label="Dismiss" onClick={dismiss}>
          <Icon name="close" />
        </button>
      </div>
      {notice.lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
    </div>
  );
}
