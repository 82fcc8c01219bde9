import { practiceItems } from '../practice-list.server';

export const load = () => ({ items: practiceItems() });
