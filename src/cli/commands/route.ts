/** `route`: refuses in one line until the router is built. */
import { UnusableInput } from '../io';

export function routeCommand(): never {
  throw new UnusableInput('route is not built yet: give the runners points by hand, then use balance');
}
