/** Where the server gets journals from: a disk, or whatever file system the editor has, asked through the client. */
import { RequestType, type Connection } from 'vscode-languageserver';

export interface Files {
  /** Addresses of all journals (*.germ) in a folder; `deep`: in its subfolders too. */
  list(folder: string, deep: boolean): Promise<string[]>;
  /** The text of a journal; undefined where it is gone. Throws with a plain message where it cannot be read. */
  read(uri: string): Promise<string | undefined>;
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
    list: (folder, deep) => connection.sendRequest(listRequest, { folder, deep }),
    read: async uri => {
      const { text, error } = await connection.sendRequest(readRequest, { uri });
      if (error !== undefined) throw new Error(error);
      return text;
    },
    picture: (uri, folder) => connection.sendRequest(pictureRequest, { uri, folder }),
  };
}
