import { z } from 'zod';
import { LANGUAGES } from '../../base/index.js';

/** The language of a result. Source: BCP 47. */
export const languageSchema = z
  .enum(LANGUAGES)
  .meta({ description: 'of all that is told in sentences, BCP 47; English when it is missing' });
