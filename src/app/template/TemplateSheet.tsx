/** A template of one's own: a saddle or a segmented bend by its numbers, the curve as it will be printed, and the paper it comes on. */
import './template.css';
import { type FormEvent, useEffect, useMemo, useRef, useState } from 'react';
import { wishedPdf, wishedSvg } from '../../shop/templates/wishedFile';
import {
  type MitreWish,
  type SaddleWish,
  type TemplateWish,
  type WishedTemplate,
  type WishField,
  wishedTemplate,
  wishRefusals,
} from '../../shop/templates/wishes';
import { useDisplay } from '../actions/display';
import { saveBlob } from '../actions/save';
import { ChoiceField } from '../inspect/ChoiceField';
import { always } from '../inspect/fields/always';
import { LengthField } from '../inspect/LengthField';
import { NumberField } from '../inspect/NumberField';
import { linesOf, tell, tellFailure } from '../notices';
import { Icon } from '../panels/Icon';
import { choosePaper, PAPER_WORDS, THICKNESS, usePaper } from '../paperChoice';
import { Preview } from './Preview';
import { closeTemplate } from './state';

const SADDLE: SaddleWish = {
  kind: 'saddle',
  outsideDiameter: 42.4,
  wall: 1.5,
  onto: 60.3,
  angle: 60,
  offset: 0,
  measuredOn: 'outside',
};
const MITRE: MitreWish = {
  kind: 'mitre',
  outsideDiameter: 50.8,
  wall: 1.5,
  angle: 90,
  joints: 4,
  radius: 76.2,
  measuredOn: 'outside',
};

export function TemplateSheet() {
  const display = useDisplay();
  const { paper, ...strip } = usePaper();
  const [kind, setKind] = useState<TemplateWish['kind']>('saddle');
  const [saddle, setSaddle] = useState(SADDLE);
  const [mitre, setMitre] = useState(MITRE);
  const wish = kind === 'saddle' ? saddle : mitre;
  const refusals = useMemo(() => wishRefusals(wish, display), [wish, display]);
  const made = useMemo(() => (refusals.length === 0 ? wishedTemplate(wish, display) : null), [refusals, wish, display]);
  const options = { ...strip, display };
  const save = async (type: 'svg' | 'pdf') => {
    if (!made) return;
    try {
      const content = type === 'svg' ? wishedSvg(made, options) : await wishedPdf(made, options, paper);
      const blob = new Blob([content], { type: type === 'svg' ? 'image/svg+xml' : 'application/pdf' });
      const name = await saveBlob(blob, `${kind}-template.${type}`, 'Wrap-around template', `.${type}`);
      if (name === null) return;
      closeTemplate();
      tell(`Saved as ${name}`, 'Print at 100 %: the bar on it must measure 100.0 mm.');
    } catch (error) {
      tellFailure('The template was not saved', ...linesOf(error));
    }
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    void save('pdf');
  };
  const fields = useRef<HTMLDivElement>(null);
  // Keys reach the first number at once; on a phone the keyboard would cover the sheet.
  useEffect(() => {
    if (matchMedia('(pointer: fine)').matches) fields.current?.querySelector('input')?.focus();
  }, []);
  return (
    <form className="sheet-body" onSubmit={submit} noValidate>
      <div className="sheet-search">
        <h2 id="template-title">Wrap-around template</h2>
        <button type="button" className="button bare icon" aria-label="Close" onClick={closeTemplate}>
          <Icon name="close" />
        </button>
      </div>
      <div className="template-body">
        <div className="template-see">
          {made ? (
            <Preview made={made} options={options} />
          ) : (
            <p className="quiet">The curve shows once the numbers fit.</p>
          )}
          {made && <Words made={made} />}
        </div>
        <div ref={fields} className="template-say">
          <ChoiceField
            label="Cut"
            value={kind}
            choices={[
              { value: 'saddle', name: 'Saddle: a tube set on another' },
              { value: 'mitre', name: 'Mitre: a bend of straight pieces' },
            ]}
            onCommit={always((value) => setKind(value as TemplateWish['kind']))}
          />
          {kind === 'saddle' ? (
            <SaddleFields refusals={refusals} wish={saddle} put={setSaddle} />
          ) : (
            <MitreFields refusals={refusals} wish={mitre} put={setMitre} />
          )}
          <PaperFields />
        </div>
      </div>
      <div className="template-foot">
        <p role="status">{made ? '' : 'See what is marked.'}</p>
        <button type="button" className="button" disabled={!made} onClick={() => void save('svg')}>
          Save SVG
        </button>
        <button type="submit" className="button strong" disabled={!made}>
          Save PDF
        </button>
      </div>
    </form>
  );
}

type Part<W> = { readonly wish: W; put(wish: W): void; readonly refusals: ReturnType<typeof wishRefusals> };

function Said({ refusals, field }: { readonly refusals: Part<never>['refusals']; readonly field: WishField }) {
  const refusal = refusals.find((r) => r.field === field);
  return refusal ? (
    <p className="template-problem" role="status">
      {refusal.found} cannot be. Allowed: {refusal.allowed}.
    </p>
  ) : null;
}

function TubeFields<W extends TemplateWish>({ wish, put, refusals }: Part<W>) {
  return (
    <>
      <LengthField
        label="Tube"
        meaning="Outside diameter of the tube that is cut"
        value={wish.outsideDiameter}
        onCommit={always((outsideDiameter) => put({ ...wish, outsideDiameter }))}
      />
      <Said refusals={refusals} field="outsideDiameter" />
      <LengthField label="Wall" value={wish.wall} onCommit={always((wall) => put({ ...wish, wall }))} />
      <Said refusals={refusals} field="wall" />
      <ChoiceField
        label="Measured on"
        meaning="Which surface of the tube meets the cut"
        value={wish.measuredOn}
        choices={[
          { value: 'outside', name: 'Outside (OD)' },
          { value: 'bore', name: 'Bore (ID)' },
        ]}
        onCommit={always((side) => put({ ...wish, measuredOn: side as W['measuredOn'] }))}
      />
    </>
  );
}

function SaddleFields({ wish, put, refusals }: Part<SaddleWish>) {
  return (
    <section className="template-part">
      <TubeFields wish={wish} put={put} refusals={refusals} />
      <LengthField
        label="Set onto"
        meaning="Outside diameter of the tube that it sits on"
        value={wish.onto}
        onCommit={always((onto) => put({ ...wish, onto }))}
      />
      <Said refusals={refusals} field="onto" />
      <NumberField
        label="Angle"
        quantity="angle"
        meaning="Between the axes; 90 is square"
        value={wish.angle}
        onCommit={always((angle) => put({ ...wish, angle }))}
      />
      <Said refusals={refusals} field="angle" />
      <LengthField
        label="Off centre"
        meaning="How far the axes pass each other"
        value={wish.offset}
        onCommit={always((offset) => put({ ...wish, offset }))}
      />
      <Said refusals={refusals} field="offset" />
    </section>
  );
}

function MitreFields({ wish, put, refusals }: Part<MitreWish>) {
  return (
    <section className="template-part">
      <TubeFields wish={wish} put={put} refusals={refusals} />
      <NumberField
        label="Bend"
        quantity="angle"
        meaning="What it turns in all"
        value={wish.angle}
        onCommit={always((angle) => put({ ...wish, angle }))}
      />
      <Said refusals={refusals} field="angle" />
      <NumberField
        label="Joints"
        quantity="count"
        meaning="Welds; one piece more"
        value={wish.joints}
        onCommit={always((joints) => put({ ...wish, joints }))}
      />
      <Said refusals={refusals} field="joints" />
      <LengthField
        label="Radius"
        meaning="Of the centerline"
        value={wish.radius}
        onCommit={always((radius) => put({ ...wish, radius }))}
      />
      <Said refusals={refusals} field="radius" />
    </section>
  );
}

/** Kept in this browser, and used by the shop folder too. */
function PaperFields() {
  const { paper, paperThickness, stations } = usePaper();
  return (
    <section className="template-part" aria-labelledby="template-paper">
      <h3 id="template-paper">Paper, of the shop folder too</h3>
      <ChoiceField
        label="Paper"
        value={paper}
        choices={(['a4', 'letter'] as const).map((value) => ({ value, name: PAPER_WORDS[value] }))}
        onCommit={always((value) => choosePaper({ paper: value as typeof paper }))}
      />
      <LengthField
        label="Thickness"
        meaning="Of the paper: it widens the wrap"
        range={THICKNESS}
        value={paperThickness}
        onCommit={always((mm) => choosePaper({ paperThickness: mm }))}
      />
      <ChoiceField
        label="Stations"
        meaning="Lines round the tube; 8 where 16 have no room"
        value={String(stations)}
        choices={['8', '16'].map((value) => ({ value, name: value }))}
        onCommit={always((value) => choosePaper({ stations: value === '8' ? 8 : 16 }))}
      />
    </section>
  );
}

function Words({ made }: { readonly made: WishedTemplate }) {
  return (
    <div className="template-words">
      {made.cautions.map((line) => (
        <p key={line} className="fails">
          {line}
        </p>
      ))}
      {made.says.map((line) => (
        <p key={line}>{line}</p>
      ))}
    </div>
  );
}
