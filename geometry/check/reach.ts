/** Where the design asks for it: every fastener and service point reachable with some tool once all is wrapped. */
import type { Header } from '../header/resolve';
import { accessEntries } from '../reach/accessReport';
import type { Meshes } from './meshes';
import type { Problem } from './report';

export function checkReach(header: Header, meshes: Meshes): Problem[] {
  if (!header.design.access?.required) return [];
  return accessEntries(header, meshes)
    .filter(({ reach }) => reach === 'blocked' || reach === 'before-wrapping')
    .map(({ reach, where, message, at }) => ({
      rule: 'reach',
      where,
      found: reach,
      allowed: 'reachable',
      message,
      at,
    }));
}
