/// <reference lib="webworker" />
import { answer, type Asked } from './answering';

const here = self as unknown as DedicatedWorkerGlobalScope;
let latest = -1;

here.onmessage = ({ data }: MessageEvent<Asked>) => {
	latest = data.number;
	void answer(
		data,
		() => data.number === latest,
		(said) => here.postMessage(said)
	);
};
