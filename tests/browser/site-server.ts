import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, relative, sep } from 'node:path';

const types: Record<string, string> = {
	'.html': 'text/html; charset=utf-8',
	'.js': 'text/javascript',
	'.css': 'text/css',
	'.json': 'application/json',
	'.svg': 'image/svg+xml',
	'.png': 'image/png',
	'.woff2': 'font/woff2',
	'.webmanifest': 'application/manifest+json'
};
const isText = (path: string) => /\.(html|js|css|json)$/.test(path);

type Files = ReadonlyMap<string, Buffer>;

/** The built site, by path from its root. */
function builtFiles(root = 'build'): Files {
	const files = readdirSync(root, { recursive: true, withFileTypes: true })
		.filter((entry) => entry.isFile())
		.map((entry) => join(entry.parentPath, entry.name));
	return new Map(
		files.map((file) => [relative(root, file).split(sep).join('/'), readFileSync(file)])
	);
}

/**
 * The same site as a later build would be: pages and entries under new names, the old ones gone, and
 * a mark in the pages. The policy in each page names the hash of its script, so that is made anew.
 */
function nextVersionOf(files: Files): Files {
	const renamed = [...files.keys()].filter((path) =>
		/immutable\/(nodes|entry)\/.*\.js$/.test(path)
	);
	const newName = (text: string) =>
		renamed.reduce((each, path) => {
			const name = path.split('/').at(-1) ?? path;
			return each.replaceAll(name, name.replace(/\.js$/, '.next.js'));
		}, text);
	return new Map(
		[...files].map(([path, body]) => {
			if (!isText(path)) return [path, body];
			let text = newName(body.toString());
			if (path.endsWith('.html'))
				text = withHashes(text.replace('<html lang="en"', '<html lang="en" data-build="next"'));
			// The name of the build is the time at which it was made.
			if (path === 'service-worker.js') text = text.replace(/\d{13}/, '$&-next');
			return [newName(path), Buffer.from(text)];
		})
	);
}

function withHashes(html: string): string {
	const scripts = [...html.matchAll(/<script>([\s\S]*?)<\/script>/g)].map(([, code]) => code ?? '');
	const hashes = scripts.map(
		(code) => `'sha256-${createHash('sha256').update(code).digest('base64')}'`
	);
	return html.replace(/script-src [^;"]*/, `script-src 'self' ${hashes.join(' ')}`);
}

/** A plain server of static files, like any that may host the site, that can be switched off. */
export class SiteServer {
	/** Paths asked for since it was last emptied. */
	readonly asked: string[] = [];
	#files = builtFiles();
	#isOff = false;

	private constructor(
		private readonly server: Server,
		/** The folder in which the site lies: '' or '/some/folder'. */
		readonly base: string
	) {
		server.on('request', (request, response) => {
			const { pathname } = new URL(request.url ?? '/', 'http://here');
			this.asked.push(pathname);
			if (this.#isOff) return void request.socket.destroy();
			if (!pathname.startsWith(`${base}/`)) return void response.writeHead(404).end();
			const path = decodeURI(pathname.slice(base.length + 1));
			const body = this.#files.get(path === '' || path.endsWith('/') ? `${path}index.html` : path);
			if (!body && this.#files.has(`${path}/index.html`))
				return void response.writeHead(301, { location: `${pathname}/` }).end();
			if (!body) return void response.writeHead(404).end('not here');
			const type = types[extname(path) || '.html'] ?? 'application/octet-stream';
			response.writeHead(200, { 'content-type': type }).end(body);
		});
	}

	static async open(base = ''): Promise<SiteServer> {
		const server = createServer();
		await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
		return new SiteServer(server, base);
	}

	get address(): string {
		return `http://127.0.0.1:${(this.server.address() as AddressInfo).port}`;
	}
	/** From here on the next build is served, and the one before is gone. */
	update(): void {
		this.#files = nextVersionOf(this.#files);
	}
	switchOff(): void {
		this.#isOff = true;
		this.server.closeAllConnections();
	}
	async close(): Promise<void> {
		this.server.closeAllConnections();
		await new Promise((done) => this.server.close(done));
	}
}
