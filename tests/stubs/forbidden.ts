/** Stands in for React, three and the app's stores in kernel tests: loading it at all is the failure. */
throw new Error('The kernel must not load React, three or zustand: move what needs them to src/app.');

export {};
