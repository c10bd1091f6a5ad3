// Four vectors of four numbers, by columns instead of rows.

export function transposed0(a: v128, b: v128, c: v128, d: v128): v128 {
  return v128.shuffle<f32>(v128.shuffle<f32>(a, b, 0, 4, 1, 5), v128.shuffle<f32>(c, d, 0, 4, 1, 5), 0, 1, 4, 5);
}

export function transposed1(a: v128, b: v128, c: v128, d: v128): v128 {
  return v128.shuffle<f32>(v128.shuffle<f32>(a, b, 0, 4, 1, 5), v128.shuffle<f32>(c, d, 0, 4, 1, 5), 2, 3, 6, 7);
}

export function transposed2(a: v128, b: v128, c: v128, d: v128): v128 {
  return v128.shuffle<f32>(v128.shuffle<f32>(a, b, 2, 6, 3, 7), v128.shuffle<f32>(c, d, 2, 6, 3, 7), 0, 1, 4, 5);
}

export function transposed3(a: v128, b: v128, c: v128, d: v128): v128 {
  return v128.shuffle<f32>(v128.shuffle<f32>(a, b, 2, 6, 3, 7), v128.shuffle<f32>(c, d, 2, 6, 3, 7), 2, 3, 6, 7);
}
