/** What a carrier changes of the sockets in front of it. */
import type { Spec } from '../../spec/spec.js';
import type { FrameLayout } from '../frame.js';
import type { SocketLayout } from '../socket.js';
import { SOCKET } from './sizes.js';

/** With carriers the legs go on into their sockets. */
export function plugged(
  spec: Spec,
  {
    socket,
    frame: { section, board },
  }: { readonly socket: SocketLayout; readonly frame: Pick<FrameLayout, 'section' | 'board'> },
): SocketLayout {
  if (!board || !spec.boards?.receivers) return socket;
  const out = section.socketFront - (board.front.receiver - SOCKET.height + SOCKET.plug);
  return { ...socket, legs: { ...socket.legs, out } };
}
