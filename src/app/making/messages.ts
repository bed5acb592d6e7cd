/** What the app and the worker that finds out about making say to each other. Plain data, copied between threads. */
import type { Design } from '../../../shared/design/types';
import type { Making } from '../../shop/making/report';

/** `number` tells the answers to one request from those to another. */
export type MakingRequest = { readonly number: number; readonly design: Design };

export type MakingReply = { readonly number: number } & ({ readonly done: Making } | { readonly failed: string });
