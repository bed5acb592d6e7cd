/** The shape of what the gas passes that is not drawn: a tailpipe, a cast manifold, a header's sizes before it is laid out. mm. */
import { maybe, object, oneOf, ranged } from './fields';
import { LENGTH, RESISTANCE, ROUGHNESS } from './ranges';

const length = ranged(LENGTH, 'mm');
const pipe = { length, bore: length };

const tailpipe = object({ ...pipe, silencer: maybe(ranged(RESISTANCE)) });
const cast = object({ branch: object(pipe), shared: object(pipe), roughness: maybe(ranged(ROUGHNESS, 'mm')) });
const sketch = object({
  arrangement: oneOf('all-into-one', 'pairs-then-one', 'threes-then-one'),
  primary: object(pipe),
  secondary: maybe(object(pipe)),
  collector: object(pipe),
});

export const exhaustShape = object({ tailpipe: maybe(tailpipe), cast: maybe(cast), sketch: maybe(sketch) });
