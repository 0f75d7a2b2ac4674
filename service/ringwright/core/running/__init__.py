"""The running engine: leak, friction, heat, wear, and the valve."""
