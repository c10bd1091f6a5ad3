/** Letters that are written from right to left and that some face holds. Source: Unicode Standard Annex 9. */
export const RIGHT_TO_LEFT = /[\p{Script=Arabic}\p{Script=Hebrew}]/u;
