export const stats = { relax: 0, tries: 0, repairs: 0, way: '', ways: {} as Record<string, number[]> };
