import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { startOffline } from './ui/offline.ts';
import './ui/tokens.css';

const root = document.getElementById('root');
if (root === null) throw new Error('index.html must hold an element with the id root');

createRoot(root).render(
  <StrictMode>
    <main>
      <h1>Kneeline</h1>
    </main>
  </StrictMode>,
);

// There is no worker in development: an old build served from its cache would hide every change.
if (import.meta.env.PROD) void startOffline(() => {});
