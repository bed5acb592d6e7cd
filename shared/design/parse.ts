/**
 * From text to a design that the kernel can trust, or one readable error. In stages, each safe because of the one before:
 * text → plain finite data → the right version → the right shape → parts that fit each other.
 */
import type { z } from 'zod';
import { dimensionProblems } from './dimensions';
import { pathOf, valueAt } from './ids';
import { readJson } from './json';
import { MAX_DESIGN_BYTES, MAX_PROBLEMS } from './limits';
import { migrate } from './migrate';
import { referenceProblems } from './references';
import { DesignError, describe, insist, type Refusal } from './refusal';
import { designShape } from './shape';
import { survey } from './survey';
import type { Design } from './types';

export { DesignError, type Refusal } from './refusal';

/** @param text the file, decoded from UTF-8. @throws DesignError */
export function parseDesign(text: string): Design {
  if (text.length > MAX_DESIGN_BYTES) {
    throw new DesignError([
      { path: 'document', found: `${text.length} bytes`, allowed: `at most ${MAX_DESIGN_BYTES}` },
    ]);
  }
  return validateDesign(readJson(text));
}

/** The value itself, as it was written: nothing added, dropped or reordered. @throws DesignError */
export function validateDesign(value: unknown): Design {
  insist(survey(value));
  const document = migrate(value);
  insist(shapeProblems(document));
  const design = document as Design;
  insist([...referenceProblems(design), ...dimensionProblems(design)]);
  return design;
}

function shapeProblems(document: unknown): Refusal[] {
  const result = designShape.safeParse(document);
  if (result.success) return [];
  return result.error.issues.map((issue, i) =>
    // Paths by id are dear to make; what no one will be shown keeps its place in the count only.
    i < MAX_PROBLEMS ? toRefusal(document, issue) : { path: '', found: '', allowed: '' },
  );
}

const toRefusal = (document: unknown, issue: z.core.$ZodIssue): Refusal => ({
  path: pathOf(document, issue.path),
  found: describe(valueAt(document, issue.path)),
  allowed: issue.message,
});
