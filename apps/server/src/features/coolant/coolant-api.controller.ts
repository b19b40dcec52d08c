import { Body, Controller, HttpCode, Post } from '@nestjs/common';
import {
  boiling,
  type Boiling,
  expansion,
  type Expansion,
  flush,
  type Flush,
  heatCarrying,
  type HeatCarrying,
  hydrometer,
  type HydrometerResult,
  protection,
  type Protection,
  recipe,
  type Recipe,
  recipeAfterFlush,
  type RecipeAfterFlush,
  refractometer,
  type RefractometerResult,
  replacement,
  type Replacement,
  type Strength,
  toStrength,
} from '#libs/coolant';
import { AnyStaff, ChangesNothing } from '../../platform/access/access.decorator.ts';
import { resultOf } from './coolant-outcome.ts';
import { HydrometerDto, RefractometerDto } from './dto/instruments.dto.ts';
import { RecipeAfterFlushDto, RecipeDto } from './dto/recipe.dto.ts';
import { OfGlycolDto } from './dto/strength.dto.ts';
import { BoilingDto, ExpansionDto, FlushDto, HeatCarryingDto, ReplacementDto } from './dto/system.dto.ts';

/** Every figure that a refill needs; each call is one pure function, the same that the pages and the job card use. */
@Controller('api/v1/coolant')
@AnyStaff()
@ChangesNothing()
export class CoolantApiController {
  /** Freezing point of a strength. */
  @Post('protection')
  @HttpCode(200)
  protection(@Body() input: OfGlycolDto): Protection {
    return resultOf(protection(input));
  }

  /** Strength that freezes at a given temperature. */
  @Post('strength')
  @HttpCode(200)
  strength(@Body() { glycol, ...given }: OfGlycolDto): Strength & { warnings: readonly unknown[] } {
    const { strength } = resultOf(toStrength(glycol, given, { field: '' }));
    const { warnings } = resultOf(protection({ glycol, volumePercent: strength.volumePercent }));
    return { ...strength, warnings };
  }

  /** How much to pour of what, counting what stays in the block. 422 with `requiredDrainL` where more must come out. */
  @Post('recipe')
  @HttpCode(200)
  recipe(@Body() input: RecipeDto): Recipe {
    return resultOf(recipe(input));
  }

  /** The recipe after a flush: the water left in the block dilutes the last fill. */
  @Post('recipe-after-flush')
  @HttpCode(200)
  recipeAfterFlush(@Body() { drainedVolumeL, ...input }: RecipeAfterFlushDto): RecipeAfterFlush {
    return resultOf(recipeAfterFlush({ ...input, drainedVolumeL: drainedVolumeL ?? input.systemVolumeL }));
  }

  /** Textbook drain-and-replace: how much to drain, by plain volumes. */
  @Post('replacement')
  @HttpCode(200)
  replacement(@Body() input: ReplacementDto): Replacement {
    return resultOf(replacement(input));
  }

  /** What is left of the old coolant after so many cycles, or how many it takes. */
  @Post('flush')
  @HttpCode(200)
  flush(@Body() input: FlushDto): Flush {
    return resultOf(flush(input));
  }

  /** Boiling point under a cap at an altitude. */
  @Post('boiling')
  @HttpCode(200)
  boiling(@Body() input: BoilingDto): Boiling {
    return resultOf(boiling(input));
  }

  /** How much the filling grows from cold to hot. */
  @Post('expansion')
  @HttpCode(200)
  expansion(@Body() input: ExpansionDto): Expansion {
    return resultOf(expansion(input));
  }

  /** Strength from a refractometer, whatever its scale; a wrong scale is named with the error it makes. */
  @Post('refractometer')
  @HttpCode(200)
  refractometer(@Body() input: RefractometerDto): RefractometerResult {
    return resultOf(refractometer(input));
  }

  /** Strength from a hydrometer at the sample's temperature. */
  @Post('hydrometer')
  @HttpCode(200)
  hydrometer(@Body() input: HydrometerDto): HydrometerResult {
    return resultOf(hydrometer(input));
  }

  /** What stronger coolant costs in carried heat and in thickness. */
  @Post('heat-carrying')
  @HttpCode(200)
  heatCarrying(@Body() input: HeatCarryingDto): HeatCarrying {
    return resultOf(heatCarrying(input));
  }
}
