/** The tool's own version, as in package.json (a test holds the two together): written into manifests, shown by `--version`. */
export const VERSION = '0.1.0';
