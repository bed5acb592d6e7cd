/** The examples are led by: none has a part that cannot be made, nor a tube that its transition leaves no straight of. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { headerParts, resolveHeader } from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';

const FOLDER = 'public/examples';

test.each(readdirSync(FOLDER).filter((name) => name.endsWith('.evenrun.json')))('%s', async (name) => {
  const { notMade, warnings } = await headerParts(
    resolveHeader(parseDesign(readFileSync(`${FOLDER}/${name}`, 'utf8'))),
  );
  expect(notMade).toEqual([]);
  expect(warnings.filter(({ where }) => where.startsWith('ports/'))).toEqual([]);
});
