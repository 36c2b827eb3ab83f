export {
  allowanceOfDeductionMm,
  bendAllowanceMm,
  bendDeductionMm,
  kFactorOfAllowance,
  type MetalBend,
  setBackMm,
} from "./bend-allowance.ts";
export { aircraftAllowance, dinCompensationMm, dinFactor, kFactorOfRightAngle } from "./bend-conventions.ts";
