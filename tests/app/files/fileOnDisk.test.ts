/** Writing back to a file: when it is safe, what is noticed before anything is lost, and that a failure leaves the file whole. */
import { describe, expect, it } from 'vitest';
import { type FileOnDisk, standingAfter, standingOf, writeOver } from '../../../src/app/files/fileOnDisk';

/** A file as a browser would hand it out: what is written arrives when the writing is closed. */
function fakeFile(leave: PermissionState[] = ['granted']) {
  const disk = { text: 'as read', modified: 1000, asked: 0, gone: false, full: false, aborted: false };
  const handle: FileOnDisk = {
    name: 'four.evenrun.json',
    queryPermission: async () => leave[0]!,
    async requestPermission() {
      disk.asked++;
      return leave[1] ?? leave[0]!;
    },
    async getFile() {
      if (disk.gone) throw new DOMException('gone', 'NotFoundError');
      return new File([disk.text], 'four.evenrun.json', { lastModified: disk.modified });
    },
    async createWritable() {
      let written = '';
      return {
        async write(data) {
          if (disk.full) throw new DOMException('no room', 'QuotaExceededError');
          written += await data.text();
        },
        async close() {
          disk.text = written;
          disk.modified += 500;
        },
        async abort() {
          disk.aborted = true;
        },
      };
    },
  };
  return { disk, link: { handle, modified: 1000 } };
}

describe('a file is written', () => {
  it('without asking where leave was given and nobody touched it, and is then linked as it is', async () => {
    const { disk, link } = fakeFile();
    expect(await standingOf(link)).toBe('ready');
    expect(disk.asked).toBe(0);
    const next = await writeOver(link.handle, new Blob(['anew']));
    expect(disk.text).toBe('anew');
    expect(await standingOf(next)).toBe('ready');
    expect(await standingOf(link)).toBe('changed');
  });

  it('after leave was asked for, and not where that is refused', async () => {
    const given = fakeFile(['prompt', 'granted']);
    expect(await standingOf(given.link)).toBe('ready');
    expect(given.disk.asked).toBe(1);
    expect(await standingOf(fakeFile(['prompt', 'denied']).link)).toBe('refused');
  });

  it('in whole or not at all', async () => {
    const { disk, link } = fakeFile();
    disk.full = true;
    await expect(writeOver(link.handle, new Blob(['half']))).rejects.toThrow('no room');
    expect(disk).toMatchObject({ text: 'as read', modified: 1000, aborted: true });
  });
});

describe('before it is written', () => {
  it('a change by something else is noticed, earlier dates too', async () => {
    const { disk, link } = fakeFile();
    disk.modified = 1001;
    expect(await standingOf(link)).toBe('changed');
    disk.modified = 999;
    expect(await standingOf(link)).toBe('changed');
  });

  it('a file that is gone is told from one that may not be written; other failures are passed on', async () => {
    const { disk, link } = fakeFile();
    disk.gone = true;
    expect(await standingOf(link)).toBe('gone');
    expect(standingAfter(new DOMException('', 'NotAllowedError'))).toBe('refused');
    expect(() => standingAfter(new Error('the disk is on fire'))).toThrow('on fire');
  });
});
