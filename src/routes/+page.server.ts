import { bottleCautions, houseKits } from '$lib/kits';
import { practiceItems } from './practice-list.server';

export const load = () => ({ items: practiceItems(), cautions: bottleCautions(houseKits) });
