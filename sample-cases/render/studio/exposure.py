"""Renders: two halves with different seeds, for the denoiser's estimate of the noise, and its guides."""
import os
import sys
import time

import bpy


def expose(path, width, height, samples, exposure=0.0):
    """Writes path_a.png, path_b.png, path_alb*.png and path_nrm*.png."""
    _settings(width, height, exposure)
    scene = bpy.context.scene
    scene.frame_set(1)
    _guides(path)
    for half, seed in (('a', 1), ('b', 77)):
        scene.cycles.seed, scene.cycles.samples = seed, max(1, samples // 2)
        scene.cycles.adaptive_min_samples = min(12, samples // 2)
        scene.render.filepath = '%s_%s.png' % (path, half)
        began = time.time()
        bpy.ops.render.render(write_still=True)
        print('RENDERED %s %.0f s' % (os.path.basename(scene.render.filepath), time.time() - began))
        sys.stdout.flush()
        scene.use_nodes = False


def _settings(width, height, exposure):
    s = bpy.context.scene
    s.render.engine, s.render.use_persistent_data = 'CYCLES', True
    c = s.cycles
    c.device, c.use_denoising = 'CPU', False
    c.use_adaptive_sampling, c.adaptive_threshold = True, 0.02
    c.max_bounces, c.diffuse_bounces, c.glossy_bounces, c.transmission_bounces = 4, 2, 3, 1
    c.caustics_reflective = c.caustics_refractive = False
    c.sample_clamp_indirect, c.sample_clamp_direct, c.blur_glossy = 4.0, 30, 0.5
    c.tile_size = 4096
    c.sampling_pattern = 'SOBOL'  # the other pattern leaves a plaid at so few samples
    s.render.resolution_x, s.render.resolution_y, s.render.resolution_percentage = width, height, 100
    s.view_settings.view_transform, s.view_settings.look = 'Filmic', 'Medium High Contrast'
    s.view_settings.exposure = exposure
    f = s.render.image_settings
    f.file_format, f.color_depth, f.color_mode, f.compression = 'PNG', '16', 'RGB', 15


def _guides(path):
    """Base colour (the AOV that every material fills) and normal, beside the picture."""
    layer = bpy.context.view_layer
    layer.use_pass_normal = True
    if 'guide' not in layer.aovs:
        layer.aovs.add().name = 'guide'
    s = bpy.context.scene
    s.use_nodes = True
    t = s.node_tree
    t.nodes.clear()
    layers, out = t.nodes.new('CompositorNodeRLayers'), t.nodes.new('CompositorNodeComposite')
    t.links.new(layers.outputs['Image'], out.inputs[0])
    half = t.nodes.new('CompositorNodeMixRGB')
    half.blend_type, half.inputs[0].default_value, half.inputs[2].default_value = 'MULTIPLY', 1, (0.5, 0.5, 0.5, 1)
    up = t.nodes.new('CompositorNodeMixRGB')
    up.blend_type, up.inputs[0].default_value, up.inputs[2].default_value = 'ADD', 1, (0.5, 0.5, 0.5, 0)
    t.links.new(layers.outputs['Normal'], half.inputs[1])
    t.links.new(half.outputs[0], up.inputs[1])
    f = t.nodes.new('CompositorNodeOutputFile')
    f.base_path = os.path.dirname(path)
    f.format.file_format, f.format.color_depth, f.format.color_mode = 'PNG', '16', 'RGB'
    f.format.color_management = 'OVERRIDE'
    f.format.display_settings.display_device, f.format.view_settings.view_transform = 'sRGB', 'Raw'
    name = os.path.basename(path)
    f.file_slots[0].path = name + '_alb'
    f.file_slots.new(name + '_nrm')
    t.links.new(layers.outputs['guide'], f.inputs[0])
    t.links.new(up.outputs[0], f.inputs[1])
