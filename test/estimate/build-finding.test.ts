import { describe, expect, test } from 'vitest';
import { inShop, told } from './estimated.js';

describe('a picture of a finding', () => {
  test.each(['a.png', 'a.PNG', 'deep/a.jpg', 'a.jpeg', 'a.webp'])('%s is one', (path) => {
    const one = inShop(`finding f "F"\n  picture "${path}"\n`);
    expect(told(one)).toEqual([]);
    expect(one.estimate.findings[0]?.pictures).toMatchObject([{ path, uri: path }]);
  });

  test.each(['a.svg', 'a.gif', 'a.png.exe', 'apng', '../a.png', '/a.png'])('%s is none of this workspace', (path) => {
    const one = inShop(`finding f "F"\n  picture "${path}"\n`);
    expect(told(one)).toEqual([['picture-outside', `"${path}"`]]);
    expect(one.estimate.findings[0]?.pictures).toMatchObject([{ path, uri: undefined }]);
  });

  test('may be missing', () => {
    expect(inShop('finding f "F"\n').estimate.findings[0]?.pictures).toEqual([]);
  });
});
