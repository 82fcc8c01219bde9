/**
 * Windows of one browser tell each other which log has gone on where, so that the one left behind
 * can say so before its next entry is refused.
 */
export interface LogWatch {
	/** Tells the other windows that this log has gone on here. */
	announce(id: string): void;
	/** Calls when this log has gone on in another window; hands back how to stop. */
	watch(id: string, onElsewhere: () => void): () => void;
}

type Word = { log: string; from: string };

function isWord(data: unknown): data is Word {
	return typeof data === 'object' && data !== null && 'log' in data && 'from' in data;
}

/**
 * @param name of the channel; one for each database
 * @param self tells this window's own word from those of others
 */
export function watchOver(
	name: string,
	self: string = crypto.randomUUID?.() ?? `${Math.random()}`
): LogWatch {
	const open = () =>
		typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel(`${name}-logs`);
	const listening = new Set<BroadcastChannel>();
	return {
		announce(id) {
			const word: Word = { log: id, from: self };
			// To open a channel takes about as long as all else that a tap does.
			const [opened] = listening;
			if (opened) return opened.postMessage(word);
			// Opened for one word and closed: a channel left open would keep the page out of the
			// browser's store of pages to go back to.
			const channel = open();
			channel?.postMessage(word);
			channel?.close();
		},
		watch(id, onElsewhere) {
			const channel = open();
			if (!channel) return () => undefined;
			listening.add(channel);
			channel.onmessage = ({ data }) => {
				if (isWord(data) && data.log === id && data.from !== self) onElsewhere();
			};
			return () => {
				listening.delete(channel);
				channel.close();
			};
		}
	};
}
