/** Who stands in the drawings, and on which line; null for the first there is. */
class Standing {
  vehicleId = $state.raw<string | null>(null);
  lineId = $state.raw<string | null>(null);
}

export const standing = new Standing();
