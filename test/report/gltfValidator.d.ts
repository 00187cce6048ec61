declare module 'gltf-validator' {
  export function validateBytes(bytes: Uint8Array): Promise<{
    readonly issues: {
      readonly messages: readonly { readonly severity: number; readonly message: string }[];
    };
    readonly info: { readonly totalTriangleCount: number; readonly drawCallCount: number };
  }>;
}
