/** Every page is written as a file, in a folder of its own, so that any plain server can host it. */
export const prerender = true;
export const trailingSlash = 'always';
