/** Where the server gets journals from: a disk, or whatever file system the editor has, asked through the client. */
import { RequestType, type Connection } from './protocol.ts';

export interface Listing {
  /** Addresses. */
  readonly files: readonly string[];
  /** What could not be looked into, in words that begin with its path. */
  readonly faults: readonly string[];
}

export interface Files {
  /** All journals (*.germ) in a folder; `deep`: in its subfolders too. */
  list(folder: string, deep: boolean): Promise<Listing>;
  /**
   * The text of a journal; undefined where it is gone, or where a link leads to it out of its folder. Throws with a
   * plain message where it cannot be read.
   */
  read(uri: string, folder: string): Promise<string | undefined>;
  /** Whether a plain file stands below a folder, reached through no link, and where the editor shows it from. */
  picture(uri: string, folder: string): Promise<PictureFound>;
}

export type PictureFound =
  { readonly address: string } | { readonly why: 'missing' | 'link' | 'unreachable' };

const listRequest = new RequestType<{ folder: string; deep: boolean }, string[], void>('plumule/list');
const readRequest = new RequestType<{ uri: string }, { text?: string; error?: string }, void>('plumule/read');
const pictureRequest = new RequestType<{ uri: string; folder: string }, PictureFound, void>('plumule/picture');

/** The editor's own file system, which also reaches remote and virtual folders. */
export function filesOfClient(connection: Connection): Files {
  return {
    list: async (folder, deep) => {
      const files = await connection.sendRequest(listRequest, { folder, deep });
      return { files, faults: [] };
    },
    read: async uri => {
      const { text, error } = await connection.sendRequest(readRequest, { uri });
      if (error !== undefined) throw new Error(error);
      return text;
    },
    picture: (uri, folder) => connection.sendRequest(pictureRequest, { uri, folder }),
  };
}

/** A server beside the disk reads it by the rules of the command line; the editor has the other file systems. */
export function filesByAddress(disk: Files, others: Files): Files {
  const at = (address: string) => (address.startsWith('file:') ? disk : others);
  return {
    list: (folder, deep) => at(folder).list(folder, deep),
    read: (uri, folder) => at(folder).read(uri, folder),
    // What the editor shows is for the editor to say.
    picture: (uri, folder) => others.picture(uri, folder),
  };
}
