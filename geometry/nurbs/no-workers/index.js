/**
 * In place of the `web-worker` package, which verb-nurbs imports and which cannot be loaded inside a worker thread. Only
 * verb's asynchronous calls would start workers through it, and none of those is used.
 */
export {};
