/** The vehicle that stands in the drawings. */
class Standing {
  vehicleId = $state.raw<string | null>(null);
}

export const standing = new Standing();
