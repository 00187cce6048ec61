import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './App.tsx';
import { startOffline } from './offline/startOffline.ts';
import { startWork } from './state/work.ts';
import './styles/theme.css';
import '../report/drawing.css';
import './styles/sheet.css';
import './styles/stage.css';
import './styles/choice.css';
import './styles/controls.css';
import './styles/forms.css';
import './styles/dialog.css';
import './styles/subjects.css';
import './styles/round.css';
import './styles/own.css';
import './styles/shortlist.css';
import './styles/lists.css';
import './styles/print.css';

const page = document.getElementById('page');
if (page === null) throw new Error('index.html has lost its #page');
createRoot(page).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
void startWork().then(startOffline);
