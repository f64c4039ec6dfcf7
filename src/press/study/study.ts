import { dataId } from './mark-live.ts';
import { createStudyBoard, loadDrawingFaces } from './study-board.ts';
import type { StudyData } from './study-data.ts';
import { openStudyPage } from './study-page.ts';

// The entry of the page's script, which is at the end of the body, after its data.

const data = JSON.parse(document.getElementById(dataId)?.textContent ?? '') as StudyData;
loadDrawingFaces().then(() => openStudyPage(data, createStudyBoard()));
