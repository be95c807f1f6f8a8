import { readdirSync, readFileSync } from 'node:fs';
import { preact } from '@preact/preset-vite';
import { createServer, type Plugin } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
import { defineConfig } from 'vitest/config';
import { headers, pagePolicy } from './.ci/closed.mjs';
import { ledgerHash } from './.ci/ledger-hash.mjs';
import { licencesInBuild } from './.ci/licences.mjs';

/** Only in the build: the development server needs inline styles. */
const securityPolicy = (): Plugin => ({
  name: 'security-policy',
  apply: 'build',
  transformIndexHtml: () => [
    {
      tag: 'meta',
      attrs: { 'http-equiv': 'Content-Security-Policy', content: pagePolicy },
      injectTo: 'head-prepend',
    },
    // An address that is followed out of the app tells nobody where it stood.
    { tag: 'meta', attrs: { name: 'referrer', content: 'no-referrer' }, injectTo: 'head-prepend' },
  ],
});

/** A build with published data, or a list, that is not as its schema says is none: a phone does not look again. */
const dataInOrder = (): Plugin => ({
  name: 'data-in-order',
  apply: 'build',
  async buildStart() {
    const server = await createServer({
      configFile: false,
      root: import.meta.dirname,
      logLevel: 'error',
      // As where it is developed, though a build is under way.
      define: { 'import.meta.env.PROD': 'false' },
      server: { middlewareMode: true, ws: false },
      optimizeDeps: { noDiscovery: true },
    });
    try {
      const tables = readdirSync(new URL('./src/reference/', import.meta.url)).filter((file) =>
        file.endsWith('tables.ts'),
      );
      const lists = ['checklists', 'emergency-cards', 'load-hazards', 'never-rules'];
      for (const path of [
        ...tables.map((file) => `/src/reference/${file}`),
        ...lists.map((list) => `/src/safety/${list}.ts`),
      ])
        await server.ssrLoadModule(path);
    } finally {
      await server.close();
    }
  },
});

const installable = VitePWA({
  strategies: 'injectManifest',
  srcDir: '.',
  filename: 'service-worker.ts',
  injectRegister: false,
  includeManifestIcons: false,
  injectManifest: {
    rollupFormat: 'iife',
    globPatterns: ['**/*.{html,js,css,json,svg,png,woff2,ttf,icc}'],
    // A file too large for the precache would be missing offline without a word.
    maximumFileSizeToCacheInBytes: 8 * 1024 * 1024,
  },
  manifest: {
    id: './',
    start_url: './',
    scope: './',
    name: 'Leesbook',
    short_name: 'Leesbook',
    description:
      'The waste and safety book of a small workshop that recovers silver and palladium from ceramic capacitors: checklists, containers, treatment, papers.',
    lang: 'en',
    display: 'standalone',
    background_color: '#FDFDFB',
    theme_color: '#FDFDFB',
    icons: [
      { src: 'icon.svg', sizes: 'any', type: 'image/svg+xml' },
      { src: 'icon-192.png', sizes: '192x192', type: 'image/png' },
      { src: 'icon-512.png', sizes: '512x512', type: 'image/png' },
      { src: 'icon-maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
    ],
  },
});

const { version } = JSON.parse(readFileSync(new URL('./package.json', import.meta.url), 'utf8'));

export default defineConfig({
  root: 'src',
  base: './',
  publicDir: '../public',
  define: {
    'import.meta.env.VITE_VERSION': JSON.stringify(version),
    'import.meta.env.VITE_LEDGER': JSON.stringify(ledgerHash(new URL('./', import.meta.url))),
  },
  build: {
    outDir: '../dist',
    emptyOutDir: true,
    chunkSizeWarningLimit: 1300,
    rolldownOptions: {
      output: {
        // Each file more costs a slow phone time: the first page, what every start needs, and the screens of every day.
        codeSplitting: {
          groups: [
            { name: 'first', tags: ['$initial'], priority: 3 },
            { name: 'begin', test: /src\/app\/begin\.tsx$/, priority: 2 },
            { name: 'everyday', test: /src\/app\/everyday\.ts$/, priority: 1 },
          ],
        },
      },
    },
  },
  // What the worker of the papers is made of is loaded part by part, too.
  worker: { format: 'es' },
  preview: { headers },
  plugins: [preact(), dataInOrder(), licencesInBuild(), securityPolicy(), installable],
  test: {
    root: import.meta.dirname,
    allowOnly: false,
    // How long something takes is for the bench to say; a busy machine fails no test.
    testTimeout: 180_000,
    hookTimeout: 180_000,
    expect: { poll: { timeout: 15_000 } },
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['tests/unit/**/*.test.ts'],
          setupFiles: ['tests/support/made-up-cases.ts'],
        },
      },
      {
        extends: true,
        test: {
          name: 'unit in a page',
          include: ['tests/unit/**/*.test.tsx'],
          environment: 'happy-dom',
          setupFiles: ['tests/unit/page-setup.ts', 'tests/support/made-up-cases.ts'],
        },
      },
      {
        extends: true,
        test: {
          name: 'published',
          include: ['tests/published/**/*.test.ts'],
          setupFiles: ['tests/support/made-up-cases.ts'],
        },
      },
      {
        extends: true,
        test: {
          name: 'faults',
          include: ['tests/faults/*.test.ts'],
          setupFiles: ['tests/support/made-up-cases.ts'],
        },
      },
      {
        extends: true,
        test: {
          name: 'faults in Chromium',
          include: ['tests/faults/in-chromium/*.test.ts'],
          globalSetup: ['tests/browser/built-app.ts'],
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/browser/built-app.ts'],
        },
      },
    ],
  },
});
