/** Imports go one way: shared ← geometry ← formats ← shop, pulse ← cli, app. Each rule is also seen to bite. */
import { expect, test } from 'vitest';
import { impurities, wrongImports } from './imports';
import { sources } from './sources';

const house = new Map([...sources('shared'), ...sources('geometry'), ...sources('src')]);
/** Pure files may hold a local called `document`: the design document is one. Its parser is the only such place. */
const pure = new Map(
  [...house].filter(([path]) => /^(shared|geometry|src\/pulse)\//.test(path) && !path.startsWith('shared/design/')),
);

test('imports go one way', () => {
  expect(house.size).toBeGreaterThan(20);
  expect(wrongImports(house)).toEqual([]);
});

test('geometry, shared and pulse know no screen, file, clock or chance', () => {
  expect(pure.size).toBeGreaterThan(10);
  expect(impurities(pure)).toEqual([]);
});

test.each([
  ['shared/a.ts', "import { x } from '../geometry/index';"],
  ['shared/b.ts', "import { x } from '../geometry';"],
  ['shared/design/a.ts', "export * from '../../src/shop/part';"],
  ['shared/a.ts', "import fs from 'node:fs';"],
  ['geometry/a.ts', "import type { X } from '../src/app/session';"],
  ['geometry/curve/a.ts', "const x = await import('../../src/formats/stl/write');"],
  ['geometry/a.ts', "import { Vector3 } from 'three/src/math/Vector3.js';"],
  ['geometry/a.ts', "import React from 'react';"],
  ['geometry/a.ts', "import { z } from 'zod';"],
  ['src/formats/a.ts', "import { x } from '../shop/part';"],
  ['src/formats/a.ts', "import { readFileSync } from 'fs';"],
  ['src/shop/a.ts', "import { x } from '../cli/run';"],
  ['src/shop/a.ts', "import { x } from '../pulse/run';"],
  ['src/pulse/a.ts', "import { x } from '../shop/part';"],
  ['src/pulse/a.ts', "import { x } from '../app/session';"],
  ['src/cli/a.ts', "import { x } from '../app/session';"],
  ['src/cli/commands/a.ts', "import { create } from 'zustand';"],
  ['src/app/panels/a.tsx', "import { x } from '../../cli/run';"],
  ['src/app/a.ts', "import { join } from 'node:path';"],
  ['src/newroom/a.ts', ''],
  ['shared/a.ts', "import x from '../../elsewhere/x';"],
])('a seeded wrong import in %s is found: %s', (path, text) => {
  expect(wrongImports(new Map([[path, text]]))).toHaveLength(1);
});

test.each(['window.scrollTo(0, 0)', 'const t = Date.now()', 'Math.random()', 'console.log(1)', 'document.title'])(
  'a seeded impurity is found: %s',
  (text) => {
    expect(impurities(new Map([['geometry/a.ts', text]]))).toHaveLength(1);
    expect(impurities(new Map([['geometry/a.ts', `// ${text}`]]))).toHaveLength(0);
  },
);
