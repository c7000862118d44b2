import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

/** Builds the page. It runs under a policy without inline scripts, inline styles or data: addresses. */
export default defineConfig({
  root: fileURLToPath(new URL('renderer', import.meta.url)),
  base: './',
  plugins: [react()],
  build: {
    outDir: fileURLToPath(new URL('dist/renderer', import.meta.url)),
    emptyOutDir: true,
    target: 'chrome140',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
});
