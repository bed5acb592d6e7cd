/** What is wrong with the shape of a rig document, in the words of its fields: from the checker's issues to refusals with a place. */
import type { z } from 'zod';
import { valueAt } from '../../../shared/design/ids';
import { describe, type Refusal } from '../../../shared/design/refusal';
import { didYouMean } from './nearest';
import { rigPath } from './paths';
import { END_KINDS, mixtureShape, perfectGasShape, rigShape } from './shape';

type Issue = z.core.$ZodIssue;
type Path = readonly PropertyKey[];

export function shapeProblems(document: unknown): Refusal[] {
  const whole = rigShape.safeParse(document);
  const issues: { issue: Issue; base: Path }[] = [];
  if (!whole.success) for (const issue of whole.error.issues) issues.push({ issue, base: [] });
  const gas = gasShape(valueAt(document, ['gas'])).safeParse(valueAt(document, ['gas']));
  if (!gas.success) for (const issue of gas.error.issues) issues.push({ issue, base: ['gas'] });
  return issues.flatMap(({ issue, base }) => refusalsOf(document, issue, base));
}

const gasShape = (gas: unknown) => (valueAt(gas, ['components']) === undefined ? perfectGasShape : mixtureShape);

function refusalsOf(document: unknown, issue: Issue, base: Path): Refusal[] {
  const segments = [...base, ...issue.path];
  if (issue.code === 'unrecognized_keys') return unknownFields(document, segments, issue);
  if (issue.code === 'invalid_union') {
    // Of several forms, the one that was begun says what is wrong with it; where none was, the union says what there is.
    const begun = issue.errors.find((branch) => branch.length > 0 && !branch.some(isOfAnotherType));
    if (begun) return begun.flatMap((inner) => refusalsOf(document, inner, segments));
  }
  const found = valueAt(document, segments);
  const meant = segments.at(-1) === 'kind' ? didYouMean(found, END_KINDS) : '';
  return [{ path: rigPath(document, segments), found: describe(found), allowed: `${issue.message}${meant}` }];
}

const isOfAnotherType = (issue: Issue): boolean =>
  issue.path.length === 0 && (issue.code === 'invalid_type' || issue.code === 'invalid_value');

function unknownFields(
  document: unknown,
  segments: Path,
  { keys, message }: z.core.$ZodIssueUnrecognizedKeys,
): Refusal[] {
  const names = message.split(', ');
  const here = Object.keys((valueAt(document, segments) as object | undefined) ?? {});
  const missing = names.filter((name) => !here.includes(name));
  return keys.map((key) => ({
    path: rigPath(document, [...segments, key]),
    found: 'a field that is not known',
    allowed: `${message}${didYouMean(key, missing)}`,
  }));
}
