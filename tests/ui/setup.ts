import '@testing-library/jest-dom/vitest';

// jsdom lays nothing out, so there is nothing to observe: drawings keep the size they begin with.
globalThis.ResizeObserver ??= class {
	observe() {}
	unobserve() {}
	disconnect() {}
};
