/** What editor and server say to each other, heard on the way: it shows who asks for what, which no command tells. */

/** A message of the protocol, as far as the tests look into it. */
export interface Message {
  readonly method?: string;
  readonly params?: unknown;
}

/** Messages in the order they were sent, of every server since the editor was started. */
export const heard: { readonly fromEditor: Message[]; readonly fromServer: Message[] } = {
  fromEditor: [],
  fromServer: [],
};

/** The parameters of every message of this kind. */
export function paramsOf(messages: readonly Message[], method: string): unknown[] {
  return messages.filter((message) => message.method === method).map(({ params }) => params);
}
