/** A folder of files as one zip, the same bytes every time: names sorted, dates fixed, one compression level. */
import { type Zippable, zipSync } from 'fflate';

export type NamedFile = { readonly name: string; readonly bytes: Uint8Array<ArrayBuffer> };

/** The earliest date the form can hold. It is kept in local time there, so it is made in local time here. */
const fixedDate = () => new Date(1980, 0, 1);

/** @param folder the one folder that everything lies in, so that unpacking strews nothing about */
export function zipFolder(folder: string, files: readonly NamedFile[]): Uint8Array {
  const entries: Zippable = {};
  for (const { name, bytes } of [...files].sort((a, b) => (a.name < b.name ? -1 : 1))) {
    const path = `${folder}/${name}`;
    if (path.startsWith('/') || path.split('/').some((part) => part === '' || part === '.' || part === '..'))
      throw new RangeError(`"${path}" cannot be a name in a zip`);
    if (path in entries) throw new RangeError(`"${path}" twice in one zip`);
    entries[path] = bytes;
  }
  return zipSync(entries, { mtime: fixedDate(), level: 6 });
}
